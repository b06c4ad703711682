import { type Attainment, STATE } from "./state";
import type { Skill } from "../records/records";

/**
 * 1 for each skill of a child that a later one has replaced: one that `Follows` it, directly or through others, is met.
 * Nothing is to be looked for there any more (a child who walks need not crawl).
 */
export function replacedSkills(attainment: Attainment, skills: readonly Skill[], child: number): Uint8Array {
  const replaced = new Uint8Array(skills.length);
  const base = child * attainment.skillCount;
  skills.forEach((skill, index) => {
    if (attainment.state[base + index] !== STATE.met) return;
    let earlier = skill.follows;
    while (earlier !== null && replaced[earlier] === 0) {
      replaced[earlier] = 1;
      earlier = skills[earlier]?.follows ?? null;
    }
  });
  return replaced;
}
