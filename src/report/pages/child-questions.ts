import { dayInWords } from "../../words/dates";
import { addMonths } from "../../age/months";
import type { RoutineVisit } from "../../cohort/visits";
import type { ChildFacts } from "./child-facts";
import { labelOf } from "./page-words";

const MOST_QUESTIONS = 6;

/** What to ask at the visit, from what the records show; the last line is the family's own. */
export function questionLines(facts: ChildFacts): string[] {
  return [...questions(facts).slice(0, MOST_QUESTIONS), OWN].map((line) => `– ${line}`);
}

const OWN = "Our own question:";

function questions(facts: ChildFacts): string[] {
  const { concerns, clock, context } = facts;
  const lost = concerns.lost.length + concerns.toConfirm.length > 0;
  const early = clock.correctedBirth !== clock.birth && context.asOf < clock.stops;
  return [
    ...(lost ? ["Our child did this before and does not now. Who should look at it, and how soon?"] : []),
    ...(concerns.openSigns.length > 0 ? ["A sign was seen. Who should look at it, and how soon?"] : []),
    ...(concerns.ofSenses.length > 0 ? ["Can hearing and sight be tested soon?"] : []),
    ...past(facts),
    ...screening(facts),
    ...transition(facts),
    ...(concerns.due.length > 0 || concerns.unchecked
      ? ["Some things were not checked. Can we check them today?"]
      : []),
    ...(early ? ["Our child was born early. Which age do you go by, and until when?"] : []),
    "What should we look out for until the next visit?",
    "Does what you see today fit with this page?",
  ];
}

/** One missed skill is a reason to talk and to screen. Source: Zubler et al., Pediatrics 2022;149(3):e2021052138. */
function past({ concerns, context }: ChildFacts): string[] {
  const [first] = concerns.past;
  const skill = first === undefined ? undefined : context.cohort.skills[first];
  if (!skill) return [];
  if (concerns.past.length > 1) {
    return ["Some skills are late in coming. What could help? Should our child be screened?"];
  }
  return [`“${labelOf(skill)}” is late in coming. What could help? Should our child be screened?`];
}

/** Source of the ages: Lipkin and Macias, Pediatrics 2020;145(1):e20193449. */
function screening({ next, before, context }: ChildFacts): string[] {
  const isRecent = before !== null && before.day >= addMonths(context.asOf, -MONTHS_TO_ASK_BACK);
  return [...(isRecent ? screeningAt(before, "Was it done?") : []), ...screeningAt(next, "Will it be done?")];
}

/** For so long after the day of a visit the page asks whether its screening was done: the records do not say. */
const MONTHS_TO_ASK_BACK = 3;

function screeningAt(visit: RoutineVisit | null, question: string): string[] {
  if (visit === null || !(visit.screening || visit.autismScreening)) return [];
  const alone = visit.screening ? "a general screening is" : "a screening for autism is";
  const what = visit.screening && visit.autismScreening ? "a general screening and one for autism are" : alone;
  return [`At ${visit.months} months, ${what} advised. ${question}`];
}

function transition({ concerns }: ChildFacts): string[] {
  const { transition: due, cameAfterConference } = concerns;
  if (due === null) return [];
  const soon = cameAfterConference ? " Let us plan it as soon as we can." : "";
  return [
    `Our child turns three on ${dayInWords(due.thirdBirthday)}. Who will help us then?${soon} (This page does not know if you met about it.)`,
  ];
}
