import { flaggedByLuck, funnelCounts, smallestDetectableRatio } from "../statistics/funnel";
import { type Dimension, DIMENSIONS, type ReferralSlices, type Slice } from "./referrals-slices";

const FUNNELS = [0.95, 0.998] as const;
const SIGNIFICANCE = 0.05;
const POWER = 0.8;

/** Definitions alone, without a count. */
export const REFERRAL_DEFINITIONS: readonly string[] = [
  "Child-months are the days of children in the program in the period, divided by 30.4375. Each day counts in the age group of the child's corrected age that day, and at the site of the enrollment in force that day.",
  "A referral counts when it was made on a day of the period on which the child was in the program. One that names several areas counts once in each area and once everywhere else.",
  "Expected is what the program's own rates by age group, over all sites and the whole period, give in the time of the row; for a site and area, the rates of that area; for an age group, the overall rate. A row is compared with a whole that it is part of, which draws the ratio of a large row towards 1.",
  "Limits of observed / expected are exact (Garwood). p is twice the smaller exact tail. Holm and Benjamini-Hochberg adjust p for the number of rows of the same kind. Funnel limits are the ratios between which 95% and 99.8% of rows lie by chance alone.",
  "A ratio far from 1 is a question, not an answer: which children a site serves, who refers and how well referrals are written down all change it.",
];

export function referralNotes(found: ReferralSlices): string[] {
  return [
    ...REFERRAL_DEFINITIONS,
    ...(found.notFollowed === 0
      ? []
      : [
          `Referrals of the period made while the child was not in the program, and so not counted: ${found.notFollowed}.`,
        ]),
    ...(found.hasSites ? [] : ["Children has no column headed Site, so no rows are by site."]),
    ...blankNotes(found),
    ...DIMENSIONS.flatMap((dimension) => luckNotes(dimension, found.slices.get(dimension) ?? [])),
    ...detectableNotes(found.slices.get("site") ?? []),
  ];
}

function blankNotes({ slices }: ReferralSlices): string[] {
  const isBlank = (dimension: Dimension) => (slices.get(dimension) ?? []).some(({ value }) => value === "");
  return [
    ...(isBlank("site") ? ["An empty site means children whose site is not recorded."] : []),
    ...(isBlank("source") ? ["An empty source means referrals that do not say where they came from."] : []),
  ];
}

function luckNotes(dimension: Dimension, slices: readonly Slice[]): string[] {
  const tested = slices.flatMap(({ referrals, expected }) =>
    expected !== null && expected > 0 ? [{ observed: referrals, expected }] : [],
  );
  if (tested.length === 0) return [];
  const parts = FUNNELS.map((level) => {
    const outside = tested.filter(({ observed, expected }) => isOutside(observed, expected, level)).length;
    const luck = tested.reduce((sum, { expected }) => sum + flaggedByLuck(expected, level), 0);
    return `${outside} outside the ${level * 100}% funnel, where luck alone would put ${luck.toFixed(2)}`;
  });
  return [`By ${dimension}: of ${tested.length} rows, ${parts.join("; ")}.`];
}

function isOutside(observed: number, expected: number, level: number): boolean {
  const { lowest, highest } = funnelCounts(expected, level);
  return observed < lowest || observed > highest;
}

function detectableNotes(sites: readonly Slice[]): string[] {
  const each = sites.flatMap(({ value, expected }) => {
    if (expected === null || expected === 0) return [];
    const ratio = smallestDetectableRatio(expected, SIGNIFICANCE, POWER);
    return [`${value === "" ? "site not recorded" : value} ${ratio.toFixed(2)} (${expected.toFixed(1)} expected)`];
  });
  if (each.length === 0) return [];
  return [
    `The smallest ratio above 1 that this much data would show in four of five such periods (two-sided 0.05, power 80%): ${each.join("; ")}. A smaller excess can be there and not be seen.`,
  ];
}
