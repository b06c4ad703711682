import { bandLabel } from "../age/bands";
import type { Cohort } from "../cohort/cohort";
import { looksByBand } from "../cohort/looks-by-band";
import type { Records } from "../records/records";

/** Sentences with counts for the method sheet: what was taken for granted, and how often. */
export function countedSentences({ counts, children }: Records): string[] {
  return [
    `Gestation is not recorded, or cannot be used, for ${counts.gestationNotRecorded} of ${children.ids.length} children; they count as born at term.`,
    `${counts.enteredBlankUsed} observations have no day of entry; a cut-off by day of entry does not leave them out.`,
    `${counts.outsideEnrolmentUsed} observations were made before enrolment or after leaving; they are used.`,
  ];
}

/** Where the looks were made, a sentence an age band: a skill that nobody looked at in a band is known for nobody there. */
export function lookSentences(cohort: Cohort, edges: readonly number[]): string[] {
  const { bandCount, looks, childrenSeen } = looksByBand(cohort, edges);
  return Array.from({ length: bandCount }, (_, band) => {
    const skills = cohort.skills.map((_, skill) => skill * bandCount + band);
    const inBand = skills.reduce((sum, at) => sum + countAt(looks, at * 4, 4), 0);
    const unseen = skills.filter((at) => childrenSeen[at] === 0).length;
    return { label: bandLabel(band, edges), inBand, unseen };
  })
    .filter(({ inBand }) => inBand > 0)
    .map(
      ({ label, inBand, unseen }) =>
        `${label}: ${inBand} looks used; ${unseen} of ${cohort.skills.length} skills were looked at in no child.`,
    );
}

function countAt(counts: Uint32Array, start: number, length: number): number {
  return counts.subarray(start, start + length).reduce((sum, count) => sum + count, 0);
}
