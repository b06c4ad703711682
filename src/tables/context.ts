import type { Day } from "../age/day";
import { attain } from "../cohort/attainment";
import type { Cohort } from "../cohort/cohort";
import { NOT_FOLLOWED } from "../cohort/following";
import type { Attainment } from "../cohort/state";
import { NO_DAY, type Records } from "../records/records";
import type { Settings } from "../settings/settings";
import { type Groups, groupsBy } from "./groups";
import type { Changes } from "./what-changed/changed-cell";

/** What every table is made from: one cohort, one set of settings, and one reading of the looks up to the as-of date. */
export interface TableContext {
  readonly cohort: Cohort;
  readonly settings: Settings;
  readonly asOf: Day;
  /** First day of the period. */
  readonly from: Day;
  readonly attainment: Attainment;
  readonly groups: Groups;
  readonly records: ServiceRecords;
}

/** What the tables about referrals, ratings, late entries and changes read beside the cohort; null where a workbook has no such table. */
export type ServiceRecords = Pick<Records, "referrals" | "signs" | "ratings"> & {
  readonly observations: Pick<Records["observations"], "day" | "entered" | "lastEntered">;
  /** What changed since an earlier run, where one was given. */
  readonly changes?: Changes | null;
};

const NO_SERVICE: ServiceRecords = {
  referrals: null,
  signs: null,
  ratings: null,
  observations: { day: new Int32Array(0), entered: new Int32Array(0), lastEntered: NO_DAY },
};

/** @throws {RangeError} without an as-of date, or when a name of `by` is no column of Children */
export function tableContext(cohort: Cohort, settings: Settings, records: ServiceRecords = NO_SERVICE): TableContext {
  if (settings.asOf === null || settings.from === null) {
    throw new RangeError("A table needs an as-of date and the first day of its period.");
  }
  return {
    cohort,
    settings,
    asOf: settings.asOf,
    from: settings.from,
    attainment: attain(cohort, settings.asOf),
    groups: groupsBy(cohort, settings.by),
    records,
  };
}

/** The group of each child followed on the as-of date, by the enrolment in force that day; -1 for all others. */
export function groupOfFollowed({ cohort, groups, asOf }: TableContext): Int32Array {
  return groupOfChildren(cohort, groups, (child) => cohort.following.enrolmentOn(child, asOf));
}

/** The group of each child ever followed, by the latest enrolment begun by the as-of date; -1 for all others. */
export function groupOfEverFollowed({ cohort, groups, asOf }: TableContext): Int32Array {
  return groupOfChildren(cohort, groups, (child) => cohort.following.latestEnrolmentBegunBy(child, asOf));
}

function groupOfChildren(cohort: Cohort, groups: Groups, enrolmentOf: (child: number) => number): Int32Array {
  return Int32Array.from(cohort.ids, (_, child) => {
    const row = enrolmentOf(child);
    return row === NOT_FOLLOWED ? -1 : (groups.ofEnrolment[row] as number);
  });
}
