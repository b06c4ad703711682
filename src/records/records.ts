import type { AgeBasis } from "../age/correction";
import type { Day } from "../age/day";
import type { Finding } from "./findings/finding";

/** A blank day in an Int32 column. */
export const NO_DAY = -2_147_483_648;

/** What one observation says. The codes of `Observations.result`. */
export const RESULT = { notMet: 0, emerging: 1, met: 2, lost: 3 } as const;
export const RESULT_LABELS = ["not met", "emerging", "met", "lost"] as const;

export const AREAS = ["gross motor", "fine motor", "social-emotional", "cognitive", "speech", "sensory"] as const;

/** Everything the program's workbook says that can be used, as typed columns, and a finding for everything else. */
export interface Records {
  readonly children: Children;
  readonly enrolments: Enrolments;
  readonly observations: Observations;
  readonly skills: readonly Skill[];
  readonly referrals: Referrals | null;
  readonly signs: Signs | null;
  readonly ratings: Ratings | null;
  readonly input: readonly TableUse[];
  readonly findings: readonly Finding[];
  readonly counts: RecordCounts;
  /** Repair decisions in force, in words that name no child. */
  readonly decisions: readonly string[];
}

/** One entry a child, in order of first appearance. */
export interface Children {
  readonly ids: readonly string[];
  readonly birth: Int32Array;
  /** Days; 0 where it is not recorded, illegal, undecided or in conflict: such a child is not corrected. */
  readonly gestationDays: Int16Array;
  /** "" where none is recorded. */
  readonly family: readonly string[];
}

/** One entry a row of Children that is used. */
export interface Enrolments {
  /** Index into Children. */
  readonly child: Int32Array;
  /** A blank `Enrolled` stands as the child's first observation; NO_DAY where there is none either (never followed). */
  readonly enrolled: Int32Array;
  /** NO_DAY: still enrolled. */
  readonly left: Int32Array;
  /** Site, Therapist and every further column, under their own headings; `values` has one text an enrolment ("" where blank). */
  readonly columns: readonly GroupColumn[];
}

export interface GroupColumn {
  /** Site and Therapist under these names, whatever synonym the workbook uses; any other under its own heading. */
  readonly heading: string;
  /** The heading as it stands in the workbook, for Site and Therapist. */
  readonly written?: string;
  readonly values: readonly string[];
}

/** One entry a row of Observations that is used, in the order of the sheet. */
export interface Observations {
  readonly child: Int32Array;
  /** Index into Skills. */
  readonly skill: Uint16Array;
  readonly day: Int32Array;
  /** RESULT. */
  readonly result: Uint8Array;
  /** 1 where the day is the day the skill was met, not the day of a look (wide sheets with `metDates` exact). */
  readonly exact: Uint8Array;
  /** Index into `observers`; -1 where none is named. */
  readonly observer: Int32Array;
  readonly observers: readonly string[];
  /** The day the row was typed in; NO_DAY where it is not recorded. */
  readonly entered: Int32Array;
  /** The last day of entry in the whole workbook, also of rows that are not used; NO_DAY where none is recorded. */
  readonly lastEntered: Day;
  /** The cell of each result, so that it can be shown; not kept where rows were taken out. */
  readonly places?: ObservationPlaces | undefined;
}

/** Rows and columns count from 0. */
export interface ObservationPlaces {
  /** Index into `sheets`. */
  readonly sheet: Uint16Array;
  readonly sheets: readonly string[];
  readonly row: Int32Array;
  readonly column: Uint16Array;
}

export interface Skill {
  readonly id: string;
  readonly label: string;
  readonly area: string;
  readonly opensMonths: number | null;
  readonly closesMonths: number | null;
  readonly ageBasis: AgeBasis;
  /** 0 to 1; null where the source gives none. */
  readonly expectedShare: number | null;
  /** Index of the skill that this one replaces. */
  readonly follows: number | null;
  readonly tryTogether: string;
  /** The sense that the skill needs; null where none is named. */
  readonly sense: Sense | null;
  readonly basis: string;
}

export type Sense = "hearing" | "seeing";

export interface Referrals {
  /** Index into Children. */
  readonly child: Int32Array;
  readonly referred: Int32Array;
  /** Areas named, split at ";"; at least one. */
  readonly areas: readonly (readonly string[])[];
  readonly reason: readonly string[];
  readonly from: readonly string[];
  readonly to: readonly string[];
  /** As `referred` where blank; NO_DAY where it comes after the as-of date. */
  readonly received: Int32Array;
  /** How many have no day of receipt: they count as received on the day they were made. */
  readonly receivedBlank?: number;
  readonly evaluated: Int32Array;
  /** 1 yes, 0 no, -1 blank. */
  readonly eligible: Int8Array;
  readonly plan: Int32Array;
  /** "family", "program" or "". */
  readonly lateReason: readonly string[];
  readonly closed: Int32Array;
}

export interface Signs {
  readonly child: Int32Array;
  readonly day: Int32Array;
  readonly sign: readonly string[];
  /** "present", "absent", "not looked for". */
  readonly seen: readonly string[];
  /** Day of the follow-up; NO_DAY where blank. */
  readonly action: Int32Array;
}

export interface Ratings {
  readonly child: Int32Array;
  readonly outcome: readonly string[];
  readonly entryDay: Int32Array;
  /** 1 to the highest level of the scale; 0 where blank. */
  readonly entryRating: Uint8Array;
  readonly exitDay: Int32Array;
  readonly exitRating: Uint8Array;
  /** 1 yes, 0 no, -1 blank. */
  readonly newSinceEntry: Int8Array;
}

/** What became of the rows of one table: `rows` = `used` + the sum of `leftOut`, always. */
export interface TableUse {
  readonly table: string;
  /** Where the records come from several files. */
  readonly file?: string;
  readonly sheet: string;
  readonly address: string;
  readonly rows: number;
  readonly used: number;
  readonly leftOut: Readonly<Record<string, number>>;
}

/** Counts that the method sheet prints. */
export interface RecordCounts {
  readonly gestationNotRecorded: number;
  readonly enteredBlankUsed: number;
  readonly outsideEnrolmentUsed: number;
}

export type RecordDay = Day;
