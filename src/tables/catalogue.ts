import { ageWhenMet } from "./age-when-met";
import { agreement } from "./agreement";
import { caseload } from "./caseload";
import type { ServiceRecords } from "./context";
import type { AgeEstimates } from "./estimates";
import { expectedByNow } from "./expected-by-now";
import { metByBand, metByBandLeft } from "./met-by-band";
import { ratings } from "./ratings";
import { reachedByAge } from "./reached-by-age";
import { recheckPlan } from "./recheck-plan";
import { referralScan } from "./referral-scan";
import { referralSteps } from "./referral-steps";
import { referrals } from "./referrals";
import { sinceEnrollment } from "./since-enrollment";
import { skillStatus } from "./skill-status";
import type { InternalId, ReleasableId, Table, TableId } from "./table";
import { trend } from "./trend";
import { whatChanged, whatChangedChildren } from "./what-changed";

/** All that is declared about one table. Its columns, title and notes are in the file that makes it. */
export interface TableDeclaration<Id extends TableId = TableId> {
  /** The name of its sheet, and its name in the task pane. */
  readonly name: string;
  /** The question that it answers, in one line. */
  readonly about: string;
  /** The table of the workbook without which it cannot be made; `changes`: an earlier workbook or report beside it. */
  readonly needs: "referrals" | "ratings" | "signs" | "changes" | null;
  /** Whose figures: children on one day, what happened between two days, or what was reached by the last day. */
  readonly when: "at a date" | "of a period" | "up to a date";
  /** Rows are single children: made only when asked for by name. */
  readonly internal: Id extends InternalId ? true : false;
  /** May be part of a release. */
  readonly releasable: Id extends ReleasableId ? true : false;
  readonly make: (estimates: AgeEstimates) => Table<Id>;
}

const RELEASABLE = { internal: false, releasable: true } as const;
const INSIDE = { internal: false, releasable: false } as const;
const INTERNAL = { internal: true, releasable: false } as const;

/** Every table there is, in the order of the report. A list of tables anywhere else is derived from this one. */
export const TABLE_CATALOGUE: { readonly [Id in TableId]: TableDeclaration<Id> } = {
  "expected-by-now": {
    name: "Expected by now",
    about: "Of the skills whose expected window has closed, how many children have met them",
    needs: null,
    when: "at a date",
    ...INSIDE,
    make: ({ context }) => expectedByNow(context),
  },
  "met-by-band": {
    name: "Met by age group",
    about: "How many children in the program on that day have met each skill, by age group",
    needs: null,
    when: "at a date",
    ...RELEASABLE,
    make: ({ context }) => metByBand(context),
  },
  "met-by-band-left": {
    name: "Met by age group, left",
    about: "The same for children who left in the period, on their last day",
    needs: null,
    when: "of a period",
    ...RELEASABLE,
    make: ({ context }) => metByBandLeft(context),
  },
  "reached-by-age": {
    name: "Reached by age",
    about: "How many children had met each skill by each age",
    needs: null,
    when: "at a date",
    ...RELEASABLE,
    make: reachedByAge,
  },
  "age-when-met": {
    name: "Age when met",
    about: "The age by which half of the children met each skill, beside its expected window",
    needs: null,
    when: "at a date",
    ...RELEASABLE,
    make: ageWhenMet,
  },
  "since-enrollment": {
    name: "Since enrollment",
    about: "How long after enrollment children gained each skill",
    needs: null,
    when: "at a date",
    ...INSIDE,
    make: ({ context }) => sinceEnrollment(context),
  },
  referrals: {
    name: "Referrals",
    about: "Referrals by site, area, age and quarter, beside the number expected",
    needs: "referrals",
    when: "of a period",
    ...RELEASABLE,
    make: ({ context }) => referrals(context),
  },
  "referral-scan": {
    name: "Referral scan",
    about: "Places and months with more referrals than chance explains",
    needs: "referrals",
    when: "of a period",
    ...INSIDE,
    make: ({ context }) => referralScan(context),
  },
  "referral-steps": {
    name: "Referral steps",
    about: "How far referrals got, and how long the steps took",
    needs: "referrals",
    when: "up to a date",
    ...RELEASABLE,
    make: ({ context }) => referralSteps(context),
  },
  ratings: {
    name: "Ratings",
    about: "Entry and exit ratings, and the two summary statements",
    needs: "ratings",
    when: "up to a date",
    ...RELEASABLE,
    make: ({ context }) => ratings(context),
  },
  trend: {
    name: "Trend",
    about: "The last eight quarters under one definition",
    needs: null,
    when: "at a date",
    ...RELEASABLE,
    make: ({ context }) => trend(context),
  },
  agreement: {
    name: "Agreement",
    about: "How often two observers on the same day agreed",
    needs: null,
    when: "at a date",
    ...INSIDE,
    make: ({ context }) => agreement(context),
  },
  "what-changed": {
    name: "What changed",
    about: "Why each count of children and of skills met is not what it was",
    needs: "changes",
    when: "at a date",
    ...INSIDE,
    make: ({ context }) => whatChanged(context),
  },
  "skill-status": {
    name: "Skill status",
    about: "Each child's status for each skill",
    needs: null,
    when: "at a date",
    ...INTERNAL,
    make: ({ context }) => skillStatus(context),
  },
  caseload: {
    name: "Caseload",
    about: "Each therapist's children in order, with reasons",
    needs: null,
    when: "at a date",
    ...INTERNAL,
    make: ({ context }) => caseload(context),
  },
  "recheck-plan": {
    name: "Recheck plan",
    about: "The skills that each therapist should check again",
    needs: null,
    when: "at a date",
    ...INTERNAL,
    make: ({ context }) => recheckPlan(context),
  },
  "what-changed-children": {
    name: "Behind a change",
    about: "The children behind each part of a change",
    needs: "changes",
    when: "at a date",
    ...INTERNAL,
    make: ({ context }) => whatChangedChildren(context),
  },
};

export const TABLE_IDS = Object.keys(TABLE_CATALOGUE) as readonly TableId[];

export const RELEASABLE_IDS = TABLE_IDS.filter(isReleasable);

/** The tables that one workbook is enough for. */
export const TABLES_OF_ONE_RUN = TABLE_IDS.filter((id) => TABLE_CATALOGUE[id].needs !== "changes");

export function isReleasable(id: TableId): id is ReleasableId {
  return TABLE_CATALOGUE[id].releasable;
}

/** The table of that name, or null. Versions up to 0.1.0 spelled one of them `since-enrolment`. */
export function tableIdOf(text: string): TableId | null {
  const spelled = text === "since-enrolment" ? "since-enrollment" : text;
  return TABLE_IDS.find((id) => id === spelled) ?? null;
}

/** True where there is what this table is made from. */
export function canBeMade(id: TableId, records: ServiceRecords): boolean {
  const { needs } = TABLE_CATALOGUE[id];
  return needs === null || (records[needs] ?? null) !== null;
}
