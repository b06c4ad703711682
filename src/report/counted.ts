import type { Decision } from "../records/decisions";
import type { Records } from "../records/records";

/** Sentences with counts for the method sheet: what was taken for granted, and how often. */
export function countedSentences({ counts, children }: Records): string[] {
  return [
    `Gestation is not recorded, or cannot be used, for ${counts.gestationNotRecorded} of ${children.ids.length} children; they count as born at term.`,
    `${counts.enteredBlankUsed} observations have no day of entry; a cut-off by day of entry does not leave them out.`,
    `${counts.outsideEnrolmentUsed} observations were made before enrolment or after leaving; they are used.`,
  ];
}

/** The repair decisions in force, in words. They may name ids: the method sheet stays inside the program. */
export function decisionSentences(decisions: readonly Decision[]): string[] {
  return decisions.filter((decision) => !decision.revoked).map(sentenceOf);
}

function sentenceOf(decision: Decision): string {
  switch (decision.kind) {
    case "same-child":
      return "Two ids are one child (settled by a person; the ids stand in the decisions file).";
    case "skill-alias":
      return `Skill "${decision.alias}" is read as "${decision.skill}".`;
    case "date-order":
      return `Text dates in ${decision.table}, column ${decision.column}, are read ${decision.order}.`;
    case "heading":
      return `In ${decision.table} the heading "${decision.heading}" is read as "${decision.means}".`;
  }
}
