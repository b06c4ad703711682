import type { Skill } from "../records/records";
import { type Attainment, STATE } from "./state";

/** A skill is not lost when one that `Follows` it is met (crawling gives way to walking), read with this same rule. */
export function restoreFollowed(attainment: Attainment, skills: readonly Skill[]): void {
  for (const later of lastFollowersFirst(skills)) {
    const earlier = skills[later]?.follows;
    if (earlier === null || earlier === undefined) continue;
    for (let base = 0; base < attainment.state.length; base += attainment.skillCount) {
      if (attainment.state[base + later] === STATE.met && isLost(attainment.state[base + earlier] as number)) {
        attainment.state[base + earlier] = STATE.met;
      }
    }
  }
}

export function isLost(state: number): boolean {
  return state === STATE.lost || state === STATE.lostToConfirm;
}

/** Skills in an order in which each stands after all that follow it. */
function lastFollowersFirst(skills: readonly Skill[]): number[] {
  const depth = skills.map((_, skill) => chainLength(skills, skill));
  return skills.map((_, skill) => skill).sort((a, b) => (depth[b] as number) - (depth[a] as number) || a - b);
}

/** How many skills stand below this one in its chain. The records leave no circle; a circle would stop at its own length. */
function chainLength(skills: readonly Skill[], skill: number): number {
  let length = 0;
  for (
    let at = skills[skill]?.follows ?? null;
    at !== null && length < skills.length;
    at = skills[at]?.follows ?? null
  ) {
    length += 1;
  }
  return length;
}
