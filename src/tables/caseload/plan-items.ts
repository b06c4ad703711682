import { type AgeClock, ageMonthsOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { replacedSkills } from "../../cohort/replaced";
import { STATE } from "../../cohort/state";
import { NO_DAY, type Skill } from "../../records/records";
import type { TableContext } from "../context";
import type { Concerns } from "./concerns";
import { isNear } from "./near";
import type { PlanItem, PlanReason } from "./plan-item";
import { sensesOf } from "./senses";
import { isBelowMet } from "./skill-standing";

/**
 * What there is to look at about one child: safety first, then the skills that the report of `horizon` would know nothing
 * about without another look: never looked for, or not met at a look that will be out of date by then.
 */
export function planItems(context: TableContext, concerns: Concerns, horizon: Day): PlanItem[] {
  const { cohort, attainment, settings } = context;
  const { child } = concerns;
  const replaced = replacedSkills(attainment, cohort.skills, child);
  const senses = sensesOf(cohort.skills);
  const months = agesOn(cohort.clocks[child] as AgeClock, horizon);
  const items = cohort.skills.flatMap((skill, index) => {
    const look = attainment.lastLook[child * attainment.skillCount + index] as number;
    const lastLook = look === NO_DAY ? null : look;
    const why = whyOf(context, concerns, index, replaced[index] === 1, isNear(skill, months[skill.ageBasis]));
    const goesStale = lastLook === null || lastLook < horizon - settings.recheckDays;
    if (why === null || (why === "not met" && !goesStale)) return [];
    return [
      {
        child,
        skill: index,
        why,
        sign: null,
        lastLook,
        narrows: goesStale,
        rank: rankOf(skill, senses[index] === true, lastLook),
      },
    ];
  });
  return [...signItems(concerns), ...items];
}

function agesOn(clock: AgeClock, day: Day) {
  return {
    corrected: ageMonthsOn(clock, day, "corrected"),
    chronological: ageMonthsOn(clock, day, "chronological"),
  };
}

function whyOf(
  { attainment }: TableContext,
  concerns: Concerns,
  skill: number,
  isReplaced: boolean,
  near: boolean,
): PlanReason | null {
  if (concerns.lost.includes(skill)) return "lost";
  if (concerns.toConfirm.includes(skill)) return "to confirm";
  if (isReplaced) return null;
  if (concerns.disagreed.includes(skill)) return "different results";
  if (concerns.past.includes(skill)) return "past window";
  if (concerns.due.includes(skill)) return "not known";
  const state = attainment.state[concerns.child * attainment.skillCount + skill] as number;
  if (isBelowMet(state) && near) return "not met";
  return state === STATE.notAssessed && near ? "not assessed" : null;
}

function signItems({ child, openSigns }: Concerns): PlanItem[] {
  return openSigns.map((sign) => ({
    child,
    skill: null,
    why: "sign",
    sign,
    lastLook: sign.day,
    narrows: false,
    rank: BEFORE_ALL_SKILLS,
  }));
}

const BEFORE_ALL_SKILLS = -100_000;

const SENSES_FIRST = -50_000;

/** Hearing and seeing, then the window that more children keep, a check to repeat before a first one, then the earlier close. */
function rankOf(skill: Skill, ofSense: boolean, lastLook: Day | null): number {
  const share = skill.expectedShare ?? SHARE_WITHOUT_SOURCE;
  const first = (ofSense ? SENSES_FIRST : 0) - 10_000 * share;
  return first + (lastLook === null ? 500 : 0) + Math.min(skill.closesMonths ?? 400, 400);
}

/** A window without a source counts like one of 75 in 100. */
const SHARE_WITHOUT_SOURCE = 0.75;
