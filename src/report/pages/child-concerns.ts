import { dayInWords } from "../../words/dates";
import { STATE } from "../../cohort/state";
import { isLost } from "../../cohort/follows";
import type { SeenSign } from "../../tables/caseload/open-signs";
import { type ChildFacts, type SkillFacts, skillsOf } from "./child-facts";
import { labelOf, MARK, someOf } from "./page-words";

const MOST_LINES = 5;

/** Losses and signs, and what to do about them, which is always to talk with the child's clinician. */
export function concernLines(facts: ChildFacts): string[] {
  const lost = skillsOf(facts).filter(({ state }) => isLost(state));
  const open = facts.concerns.openSigns;
  const lines = [...lost.map(lossLine), ...open.map(signLine), ...newlyFollowed(facts).map(signLine)];
  const advice = lost.length + open.length > 0 ? TALK_NOW : NONE_NOW;
  const about = facts.signs === null ? " The records have no list of warning signs." : "";
  return [...someOf(lines, MOST_LINES), `${advice}${about}`];
}

const TALK_NOW =
  "Please talk with your child's clinician about this now. Do not wait for the visit. Only the clinician can say what it means. It is always right to ask.";
const NONE_NOW =
  "The records show no loss and no open sign. If your child stops doing a thing, call your child's clinician. Do not wait for a visit.";

function lossLine({ skill, state, lastLook }: SkillFacts): string {
  const day = dayInWords(lastLook);
  return state === STATE.lost
    ? `${MARK.lost} ${labelOf(skill)}: seen before, not seen any more on ${day}.`
    : `${MARK.lost} ${labelOf(skill)}: seen before, not clearly seen on ${day}. This may be a loss. It needs one more check.`;
}

function signLine({ sign, day, action }: SeenSign): string {
  const after = action === null ? "no follow-up noted yet" : `followed up on ${dayInWords(action)}`;
  return `Sign seen on ${dayInWords(day)}: ${sign}; ${after}.`;
}

/** Signs followed up since the last visit. */
function newlyFollowed({ signs, before }: ChildFacts): SeenSign[] {
  const since = before?.day ?? -Infinity;
  return (signs ?? []).filter(({ action }) => action !== null && action > since);
}
