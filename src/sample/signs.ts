import { ageMonthsOn } from "../age/correction";
import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleChild } from "./children";
import type { TrueLoss } from "./losses";
import { SIGN_OF_LOSS, SIGNS_AT_SIX_MONTHS } from "./program";
import type { Visit } from "./visits";

export interface SampleSign {
  readonly child: number;
  readonly day: Day;
  readonly sign: string;
  readonly seen: "present" | "absent" | "not looked for";
  /** Day of the follow-up; null where none is noted. */
  readonly action: Day | null;
}

/** The signs of six months, at the first visit of that age, and the sign of a loss at the first visit after one. */
export function drawSigns(
  children: readonly SampleChild[],
  visits: readonly Visit[],
  losses: readonly TrueLoss[],
  seed: number,
  last: Day,
): SampleSign[] {
  const chance = chanceOf(seed, 8);
  return children.flatMap((child, index) => {
    const own = visits.filter((visit) => visit.child === index);
    const atSix = own.find((visit) => isAboutSix(ageMonthsOn(child.clock, visit.day)));
    const loss = losses.find((each) => each.child === index);
    const after = loss && own.find((visit) => visit.day >= loss.from);
    return [
      ...(atSix ? SIGNS_AT_SIX_MONTHS.map((sign) => drawSign(chance, index, atSix.day, sign, last)) : []),
      ...(after ? [present(chance, index, after.day, SIGN_OF_LOSS, last)] : []),
    ];
  });
}

function isAboutSix(months: number): boolean {
  return months >= 5.5 && months < 8;
}

function drawSign(chance: Chance, child: number, day: Day, sign: string, last: Day): SampleSign {
  const seen = chance.weighted(["absent", "not looked for", "present"] as const, [90, 7, 3]);
  return seen === "present" ? present(chance, child, day, sign, last) : { child, day, sign, seen, action: null };
}

function present(chance: Chance, child: number, day: Day, sign: string, last: Day): SampleSign {
  const action = day + chance.whole(1, 20);
  return { child, day, sign, seen: "present", action: chance.yes(0.75) && action <= last ? action : null };
}
