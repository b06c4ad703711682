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
  const followed = newlyFollowed(facts);
  const lines = [...lost.map(lossLine), ...open.map(signLine), ...followed.map(signLine)];
  const about = facts.signs === null ? "The records have no list of warning signs." : null;
  const advice = lost.length + open.length > 0 ? TALK_NOW : NONE_NOW;
  return [...someOf(lines, MOST_LINES), about === null ? advice : `${advice} ${about}`];
}

const TALK_NOW =
  "Please talk with your child's clinician about this now, without waiting for the visit. What it means is for the clinician to say, and asking is always right.";
const NONE_NOW =
  "The records show no loss and no sign that waits for a follow-up. Should your child stop doing something, call your child's clinician then, without waiting for a visit.";

function lossLine({ skill, state, metDay, lastLook }: SkillFacts): string {
  const before = metDay < lastLook ? `seen by ${dayInWords(metDay)}, ` : "";
  const now = dayInWords(lastLook);
  return state === STATE.lost
    ? `${MARK.lost} ${labelOf(skill)}: lost; ${before}recorded as lost on ${now}.`
    : `${MARK.lost} ${labelOf(skill)}: lost, to confirm; ${before}not clearly seen on ${now}. One look is no proof: it is to be looked at again.`;
}

function signLine({ sign, day, action }: SeenSign): string {
  const after = action === null ? "no follow-up noted yet" : `followed up on ${dayInWords(action)}`;
  return `Sign seen on ${dayInWords(day)}: ${sign}; ${after}.`;
}

/** Signs seen or followed up since the last visit. */
function newlyFollowed({ signs, before }: ChildFacts): SeenSign[] {
  const since = before?.day ?? -Infinity;
  return (signs ?? []).filter(({ action }) => action !== null && action > since);
}
