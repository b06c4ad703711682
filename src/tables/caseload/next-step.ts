import type { Concerns } from "./concerns";

/** What to do next about one child. Whatever it is, the child's clinician decides what follows from it. */
export function nextStepInWords(concerns: Concerns): string {
  const steps = [...STEPS[concerns.priority](concerns), ...dated(concerns)];
  return [...steps, "The child's clinician decides."].join(" ");
}

const STEPS: Readonly<Record<Concerns["priority"], (concerns: Concerns) => string[]>> = {
  1: ({ lost, toConfirm, openSigns }) => [
    ...(lost.length > 0
      ? ["Talk with the family and the child's clinician about the loss now; do not wait for the next visit."]
      : []),
    ...(toConfirm.length > 0
      ? ["Look again at the next contact to confirm, and talk with the child's clinician about it now."]
      : []),
    ...(openSigns.length > 0 ? ["Talk with the child's clinician about the sign now, and note the follow-up."] : []),
  ],
  2: () => ["Look again at the skills past their windows, then talk with the child's clinician about all of them."],
  3: ({ disagreed }) => [
    disagreed.length > 0
      ? "Agree how to look, and look again together; tell the child's clinician what both saw."
      : "Look again at the next contact, and share what is seen with the child's clinician.",
  ],
  4: ({ opening, correctionStops, past }) => [
    ...(opening.length > 0 ? ["Show the family what to try together for the skills that open."] : []),
    ...(correctionStops === null ? [] : ["Tell the family that ages will be counted from birth."]),
    ...lookAgain(past),
  ],
  5: ({ past }) => [...lookAgain(past), "Go on as planned."],
};

function lookAgain(past: readonly number[]): string[] {
  return past.length === 0 ? [] : ["Look for the skills past their windows again in good time."];
}

/** Dates do not wait for what is more urgent. */
function dated({ visit, transition }: Concerns): string[] {
  return [
    ...(transition === null ? [] : ["Arrange the transition conference with the family; local rules decide how."]),
    ...(visit === null ? [] : ["Give the family their page for the visit."]),
  ];
}
