import type { Day } from "../age/day";
import { chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { NEVER } from "./attainment";
import { SKILLS, skillIndex } from "./skills";

/** A skill that a child truly lost, and the day it came back (null: it has not). */
export interface TrueLoss {
  readonly child: number;
  readonly skill: number;
  readonly from: Day;
  readonly restored: Day | null;
}

const SHARE_WITH_A_LOSS = 0.03;
/** Days from the return of a skill to the next one of its chain, at least. */
const DAYS_AFTER_RETURN = 30;

/** The skill that each skill follows, by index; -1 for none. */
const FOLLOWED = SKILLS.map(({ follows }) => (follows === "" ? -1 : skillIndex(follows)));

/** A few true losses, of words, gestures and games, while the child is in the program. */
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

/** The days on which skills truly came, where a child who lost one comes to no later one of the chain before it is back. */
export function delayedByLosses(attained: readonly Int32Array[], losses: readonly TrueLoss[]): Int32Array[] {
  return attained.map((days, child) => {
    const own = losses.filter((loss) => loss.child === child);
    return own.length === 0 ? days : days.map((day, skill) => own.reduce((on, loss) => delayed(on, skill, loss), day));
  });
}

function delayed(day: Day, skill: number, { skill: lost, from, restored }: TrueLoss): Day {
  if (day < from || !comesAfter(skill, lost)) return day;
  return restored === null || day === NEVER ? NEVER : Math.max(day, restored + DAYS_AFTER_RETURN);
}

function comesAfter(skill: number, earlier: number): boolean {
  const before = FOLLOWED[skill] as number;
  return before === earlier || (before >= 0 && comesAfter(before, earlier));
}

/** Skills that came in the span and, by the time they may be lost, are not part of a later one. */
function losable(attained: Int32Array, from: Day, until: Day): number[] {
  return SKILLS.flatMap((skill, index) => {
    const day = attained[index] ?? NEVER;
    const next = SKILLS.map((_, other) => ((FOLLOWED[other] as number) === index ? (attained[other] as Day) : NEVER));
    return skill.losable && day >= from && day <= until && Math.min(...next) > day + 90 ? [index] : [];
  });
}
