import { ageWhenMet } from "../tables/age-when-met";
import { agreement } from "../tables/agreement";
import { caseload } from "../tables/caseload";
import type { ServiceRecords } from "../tables/context";
import type { AgeEstimates } from "../tables/estimates";
import { metByBand, metByBandLeft } from "../tables/met-by-band";
import { referralScan } from "../tables/referral-scan";
import { ratings } from "../tables/ratings";
import { referralSteps } from "../tables/referral-steps";
import { referrals } from "../tables/referrals";
import { reachedByAge } from "../tables/reached-by-age";
import { recheckPlan } from "../tables/recheck-plan";
import { sinceEnrolment } from "../tables/since-enrolment";
import { skillStatus } from "../tables/skill-status";
import type { Table } from "../tables/table";
import { trend } from "../tables/trend";

export interface TableMaker {
  readonly id: string;
  /** Made only when asked for by name: its rows stand for single children. */
  readonly internal: boolean;
  /** The table of the workbook that it is made from: absent, the maker is skipped. */
  readonly needs?: "referrals" | "ratings" | "signs";
  readonly make: (estimates: AgeEstimates) => Table;
}

/** Every table there is, in the order of the report. */
export const TABLE_LIST: readonly TableMaker[] = [
  { id: "met-by-band", internal: false, make: ({ context }) => metByBand(context) },
  { id: "met-by-band-left", internal: false, make: ({ context }) => metByBandLeft(context) },
  { id: "reached-by-age", internal: false, make: reachedByAge },
  { id: "age-when-met", internal: false, make: ageWhenMet },
  { id: "since-enrolment", internal: false, make: ({ context }) => sinceEnrolment(context) },
  { id: "referrals", internal: false, needs: "referrals", make: ({ context }) => referrals(context) },
  {
    id: "referral-scan",
    internal: false,
    needs: "referrals",
    make: ({ context }) => referralScan(context),
  },
  {
    id: "referral-steps",
    internal: false,
    needs: "referrals",
    make: ({ context }) => referralSteps(context),
  },
  { id: "ratings", internal: false, needs: "ratings", make: ({ context }) => ratings(context) },
  { id: "trend", internal: false, make: ({ context }) => trend(context) },
  { id: "agreement", internal: false, make: ({ context }) => agreement(context) },
  { id: "skill-status", internal: true, make: ({ context }) => skillStatus(context) },
  { id: "caseload", internal: true, make: ({ context }) => caseload(context) },
  { id: "recheck-plan", internal: true, make: ({ context }) => recheckPlan(context) },
];

/** True where the workbook has what the table is made from. */
export function canBeMade({ needs }: TableMaker, records: ServiceRecords): boolean {
  return needs === undefined || records[needs] !== null;
}

export const TABLE_IDS: readonly string[] = TABLE_LIST.map(({ id }) => id);
