import type { TableContext } from "../context";
import type { Concerns } from "./concerns";
import { labelOf, named } from "./naming";

/** What to do next about one child. Whatever it is, the child's clinician decides what follows from it. */
export function nextStepInWords(context: TableContext, concerns: Concerns): string {
  const steps = [...STEPS[concerns.priority](concerns, context), ...dated(concerns)];
  return [...steps, "The child's clinician decides."].join(" ");
}

type Steps = (concerns: Concerns, context: TableContext) => string[];

const STEPS: Readonly<Record<Concerns["priority"], Steps>> = {
  1: (concerns, context) => [
    ...(concerns.lost.length > 0
      ? ["Talk with the family and the child's clinician about the loss now; do not wait for the next visit."]
      : []),
    ...(concerns.toConfirm.length > 0
      ? ["Talk with the child's clinician about the possible loss now, and check it again at the next contact."]
      : []),
    ...(concerns.openSigns.length > 0
      ? ["Talk with the child's clinician about the sign now, and write down the follow-up."]
      : []),
    ...pastToo(concerns),
    ...senses(concerns, context),
  ],
  2: (concerns, context) => [
    "Talk with the family and the child's clinician now about the skills past their windows, and ask about screening.",
    ...senses(concerns, context),
    ...checkDue(concerns, context),
  ],
  3: (concerns, context) => [
    ...(concerns.past.length > 0
      ? ["Check it again at the next contact, and talk with the child's clinician about it and about screening."]
      : []),
    ...(concerns.disagreed.length > 0
      ? ["Check again together what the two observers saw differently, and tell the child's clinician what both saw."]
      : []),
    ...checkDue(concerns, context),
  ],
  4: (concerns, context) => [
    ...(concerns.unchecked ? ["Check this child's skills at the next contact, hearing and seeing first."] : []),
    ...checkDue(concerns, context),
    "Tell the child's clinician what is found.",
  ],
  5: ({ opening, correctionStops, outOfDate }) => [
    ...(opening.length > 0 ? ["Show the family what to try together for the skills that open."] : []),
    ...(correctionStops === null ? [] : ["Tell the family that ages will be counted from birth."]),
    ...(outOfDate.length > 0 ? ["Check again what was not met at the last check."] : []),
    ASK,
  ],
  6: () => [`Check again at the next visit. ${ASK}`],
};

const ASK = "A worry of the family goes to the child's clinician, whatever the records say.";

function pastToo({ past }: Concerns): string[] {
  return past.length === 0 ? [] : ["Name the skills past their windows in the same talk, and ask about screening."];
}

/** What is not heard or seen is looked into before anything else. */
function senses({ ofSenses }: Concerns, { cohort }: TableContext): string[] {
  const kinds = [...new Set(ofSenses.map((skill) => cohort.skills[skill]?.sense ?? "hearing and seeing"))];
  return kinds.length === 0 ? [] : [`Ask the child's clinician to look into ${kinds.sort().join(" and ")} first.`];
}

function checkDue({ due }: Concerns, context: TableContext): string[] {
  return due.length === 0 ? [] : [`Check now: ${named(due.map((skill) => labelOf(context, skill)))}.`];
}

/** Dates do not wait for what is more urgent. */
function dated({ visit, transition, cameAfterConference }: Concerns): string[] {
  const when = cameAfterConference ? " as soon as possible" : "";
  return [
    ...(transition === null
      ? []
      : [`Arrange the transition conference with the family${when}; local rules decide how.`]),
    ...(visit === null ? [] : ["Give the family their page for the visit."]),
  ];
}
