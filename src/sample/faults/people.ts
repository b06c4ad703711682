import type { Day } from "../../age/day";

/** Children of the faulty workbook who exist to carry faults, so that each fault touches a few rows only. */
export interface Carrier {
  readonly birth: Day;
  readonly enrolled: Day;
}

/** A child on whom nothing is wrong; faulty observations, referrals, signs and ratings are about this one. */
export const HOST = "AF-9001";
export const LEAVER = "AF-9002";
/** Written as text in Children and as a number elsewhere. */
export const NUMERIC = "9003";
/** Written with full-width digits, case, outer and zero-width spaces. */
export const SPACED = "AF-9004";
export const BIRTH_CONFLICT = "AF-9005";
export const NO_BIRTH = "AF-9006";
export const STRANGER = "AF-9999";

/** Some sixteen months old on the last day, followed for a year. */
export function carrierOn(last: Day): Carrier {
  return { birth: last - 500, enrolled: last - 400 };
}

export const LEAVER_LEFT_DAYS_BEFORE_END = 100;
