/** Rows as a person would type them: clean, with ISO dates. What both implementations are given. */
export interface OracleInput {
  readonly children: readonly ChildRow[];
  readonly observations: readonly ObservationRow[];
  readonly skills: readonly SkillRow[];
  readonly settings: OracleSettings;
}

/** One enrolment of one child. */
export interface ChildRow {
  readonly child: string;
  readonly birth: string;
  /** Days; null where none is recorded. */
  readonly gestation: number | null;
  readonly site: string;
  readonly therapist: string;
  readonly enrolled: string | null;
  readonly left: string | null;
}

export type Result = "not met" | "emerging" | "met" | "lost";

export interface ObservationRow {
  readonly child: string;
  readonly skill: string;
  readonly date: string;
  readonly result: Result;
  readonly observer?: string | null;
  readonly entered?: string | null;
}

export interface SkillRow {
  readonly skill: string;
  readonly label: string;
  readonly area: string;
  /** Months. */
  readonly opens: number | null;
  /** Months. */
  readonly closes: number | null;
  readonly ageBasis: "corrected" | "chronological" | null;
  readonly expectedShare: number | null;
  /** The skill that this one replaces. */
  readonly follows: string | null;
}

export interface OracleSettings {
  readonly asOf: string;
  /** First day of the period; null: of the quarter of `asOf`. */
  readonly from: string | null;
  readonly enteredBy: string | null;
  readonly belowDays: number;
  /** Chronological months at which correcting stops, or a corrected age, or never. */
  readonly untilMonths: number | `${number} corrected` | "always";
  readonly edges: readonly number[];
  /** Infinity: never. */
  readonly recheckDays: number;
  /** What different results of one day count as, where one of them is met; not met where left out. */
  readonly disagreement?: "not met" | "met";
  readonly by: readonly string[];
}

export type OracleRow = Record<string, string | number | null>;
