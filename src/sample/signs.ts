import { ageMonthsOn } from "../age/correction";
import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { Truth } from "./observations";
import { SIGN_OF_LOSS, type SignAtSixMonths, SIGNS_AT_SIX_MONTHS } from "./program";
import { skillIndex } from "./skills";
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
  { children, attained, losses }: Truth,
  visits: readonly Visit[],
  seed: number,
  last: Day,
): SampleSign[] {
  const chance = chanceOf(seed, 8);
  return children.flatMap((child, index) => {
    const own = visits.filter((visit) => visit.child === index);
    const atSix = own.find((visit) => isAboutSix(ageMonthsOn(child.clock, visit.day)));
    const loss = losses.find((each) => each.child === index);
    const after = loss && own.find((visit) => visit.day >= loss.from);
    const days = attained[index] as Int32Array;
    return [
      ...(atSix ? SIGNS_AT_SIX_MONTHS.map((sign) => drawSign(chance, index, atSix.day, sign, days, last)) : []),
      ...(after ? [present(chance, index, after.day, SIGN_OF_LOSS, last)] : []),
    ];
  });
}

function isAboutSix(months: number): boolean {
  return months >= 5.5 && months < 8;
}

/** A sign that a skill of the list is missing is there where the skill is still far off, and nowhere else. */
function drawSign(
  chance: Chance,
  child: number,
  day: Day,
  { sign, skill }: SignAtSixMonths,
  attained: Int32Array,
  last: Day,
): SampleSign {
  const usual = chance.weighted(["absent", "not looked for", "present"] as const, [92, 7, 1]);
  const missing = skill !== "" && (attained[skillIndex(skill)] as Day) > day + DAYS_FAR_OFF;
  const seen = skill === "" || usual === "not looked for" ? usual : missing ? "present" : "absent";
  return seen === "present" ? present(chance, child, day, sign, last) : { child, day, sign, seen, action: null };
}

const DAYS_FAR_OFF = 45;

function present(chance: Chance, child: number, day: Day, sign: string, last: Day): SampleSign {
  const action = day + chance.whole(1, 20);
  return { child, day, sign, seen: "present", action: chance.yes(0.75) && action <= last ? action : null };
}
