import { bandLabel } from "../age/bands";
import { counted, plural } from "../words/numbers";
import type { Cohort } from "../cohort/cohort";
import { looksByBand } from "../cohort/looks-by-band";
import type { Records } from "../records/records";

/** Sentences with counts for the method sheet: what was taken for granted, and how often. */
export function countedSentences({ counts, children, referrals }: Records): string[] {
  return [
    `The gestation of ${counted(counts.gestationNotRecorded)} of ${plural(children.ids.length, "child is", "children is")} missing or cannot be used; they count as born at term.`,
    `${plural(counts.enteredBlankUsed, "observation has", "observations have")} no day of entry; a cut-off by day of entry does not leave them out.`,
    `${plural(counts.outsideEnrolmentUsed, "observation was", "observations were")} made before enrollment or after leaving, and used.`,
    ...notReceived(referrals),
  ];
}

/** A blank Received is read as the day of referral. */
function notReceived(referrals: Records["referrals"]): string[] {
  const blank = referrals?.receivedBlank ?? 0;
  if (blank === 0) return [];
  const of = referrals?.referred.length ?? 0;
  return [
    `${counted(blank)} of ${plural(of, "referral has", "referrals have")} no day under Received; each counts as received on the day it was made.`,
  ];
}

/** Where the observations were made, one sentence per age group: a skill that was checked in no child there is not known there. */
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
        `${label}: ${plural(inBand, "observation", "observations")} used; ${unseen} of ${cohort.skills.length} skills were not checked in any child.`,
    );
}

function countAt(counts: Uint32Array, start: number, length: number): number {
  return counts.subarray(start, start + length).reduce((sum, count) => sum + count, 0);
}
