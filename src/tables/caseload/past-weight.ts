import type { Skill } from "../../records/records";

/** Weights of skills past their window that together count as several. */
export const SEVERAL = 2;

const EXPECTED_BY_MOST = { share: 0.75, weight: 0.25 } as const;
const EXPECTED_BY_NEARLY_ALL = { share: 0.99, weight: 1 } as const;
const NO_SHARE_WEIGHT = 0.5;

/**
 * How much one skill past its window says about one child (METHOD.md, section 6): up to one child in four stands past a
 * window of 0.75, one in a hundred past one of 0.99. Between the two, and no further, the weight follows the share.
 */
export function pastWindowWeight({ expectedShare }: Pick<Skill, "expectedShare">): number {
  if (expectedShare === null) return NO_SHARE_WEIGHT;
  const { share, weight } = EXPECTED_BY_MOST;
  const along = (expectedShare - share) / (EXPECTED_BY_NEARLY_ALL.share - share);
  return weight + (EXPECTED_BY_NEARLY_ALL.weight - weight) * Math.min(1, Math.max(0, along));
}

/** Weights are added in doubles, so that two may come out as a hair less. */
export function areSeveral(weight: number): boolean {
  return weight >= SEVERAL - 1e-9;
}
