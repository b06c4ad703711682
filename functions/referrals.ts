import { inCells } from "./answer";
import { referralCells, referralContext } from "./convert/referral-cells";
import { remembered } from "./memo";

/**
 * Referrals for the time children were in the program, against what the program's own rates by age give.
 * @customfunction REFERRALS
 * @cancelable
 * @param children The Children table with its headings; needs the column Enrolled
 * @param referrals The Referrals table with its headings
 * @param from First day of the period
 * @param to Last day of the period
 * @param [settings] Two columns, names and values of settings
 * @returns A row for each site, area, age group, quarter, source, and site and area, below a header row
 */
export function referrals(children: any[][], referrals: any[][], from: any, to: any, settings?: any[][]): any[][] {
  return inCells(() =>
    remembered("REFERRALS", [children, referrals, from, to, settings], () =>
      referralCells(referralContext({ children, referrals, from, to, settings })),
    ),
  );
}
