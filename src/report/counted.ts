import type { Records } from "../records/records";

/** Sentences with counts for the method sheet: what was taken for granted, and how often. */
export function countedSentences({ counts, children }: Records): string[] {
  return [
    `Gestation is not recorded, or cannot be used, for ${counts.gestationNotRecorded} of ${children.ids.length} children; they count as born at term.`,
    `${counts.enteredBlankUsed} observations have no day of entry; a cut-off by day of entry does not leave them out.`,
    `${counts.outsideEnrolmentUsed} observations were made before enrolment or after leaving; they are used.`,
  ];
}
