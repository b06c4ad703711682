import { dayInWords } from "../../words/dates";
import { areSeveral } from "../../tables/caseload/past-weight";
import type { ChildFacts } from "./child-facts";

const MOST_QUESTIONS = 4;

/** What to ask at the visit, from what the records show; the last line is the family's own. */
export function questionLines(facts: ChildFacts): string[] {
  return [...questions(facts).slice(0, MOST_QUESTIONS), OWN].map((line) => `– ${line}`);
}

const OWN = "Our own question:";

function questions({ concerns, next, clock, context }: ChildFacts): string[] {
  const lost = concerns.lost.length + concerns.toConfirm.length > 0;
  const early = clock.correctedBirth !== clock.birth && context.asOf < clock.stops;
  const { transition } = concerns;
  return [
    ...(lost
      ? ["Something was there and is not seen now. Who should look at it, how soon, and is screening wise now?"]
      : []),
    ...(concerns.openSigns.length > 0 ? ["A sign was seen. Does it need a look now, and by whom?"] : []),
    ...(areSeveral(concerns.pastWeight)
      ? ["Several skills are past their windows. What do you make of them together, and what would help?"]
      : []),
    ...(next?.screening ? ["General screening is recommended at this age. Is it planned for this visit?"] : []),
    ...(transition === null
      ? []
      : [`The third birthday is on ${dayInWords(transition.thirdBirthday)}. Who goes on with us after it?`]),
    ...(early ? ["Our child was born early. Which age do you go by, and until when?"] : []),
    "What should we look out for until the next visit?",
    "What you have read here and what you see today: do they fit together?",
  ];
}
