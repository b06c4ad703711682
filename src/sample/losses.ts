import type { Day } from "../age/day";
import { chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { NEVER } from "./attainment";
import { SKILLS } from "./skills";

/** A skill that a child truly lost, and the day it came back (null: it has not). */
export interface TrueLoss {
  readonly child: number;
  readonly skill: number;
  readonly from: Day;
  readonly restored: Day | null;
}

const SHARE_WITH_A_LOSS = 0.03;

/** A few true losses, of skills of speech and of being with others, while the child is followed. */
export function drawLosses(
  children: readonly SampleChild[],
  attained: readonly Int32Array[],
  seed: number,
  last: Day,
): TrueLoss[] {
  const chance = chanceOf(seed, 3);
  const losses: TrueLoss[] = [];
  children.forEach((child, index) => {
    if (!chance.yes(SHARE_WITH_A_LOSS)) return;
    const stay = child.stays[0];
    const until = Math.min(stay?.left ?? last, last) - 150;
    const open = losable(attained[index] as Int32Array, (stay?.enrolled ?? last) + 30, until);
    if (open.length === 0) return;
    const skill = chance.pick(open);
    const from = ((attained[index] as Int32Array)[skill] as Day) + chance.whole(50, 90);
    losses.push({ child: index, skill, from, restored: chance.yes(0.3) ? from + chance.whole(60, 120) : null });
  });
  return losses;
}

export function isLost(losses: readonly TrueLoss[], skill: number, on: Day): boolean {
  return losses.some(
    (loss) => loss.skill === skill && on >= loss.from && (loss.restored === null || on < loss.restored),
  );
}

function losable(attained: Int32Array, from: Day, until: Day): number[] {
  return SKILLS.flatMap((skill, index) => {
    const day = attained[index] ?? NEVER;
    return (skill.area === "speech" || skill.area === "social-emotional") && day >= from && day <= until ? [index] : [];
  });
}
