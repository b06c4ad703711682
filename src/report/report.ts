import type { Bridge } from "./changed/bridges";
import type { Finding } from "../records/findings/finding";
import type { Source } from "../records/fingerprint";
import type { Skill, TableUse } from "../records/records";
import type { SettingsEcho } from "../settings/settings";
import type { ScannedMonth } from "../tables/referral-scan-months";
import type { Table, TableId } from "../tables/table";
import type { TrendOverview } from "../tables/trend-overview";

export const TOOL_NAME = "Windowline";

/** Everything one run found, before any host shows it. */
export interface Report {
  readonly tool: { readonly name: string; readonly version: string };
  /** Every setting under its own name, as plain values: dates as ISO text, `correctBelow` as "37+0". */
  readonly settings: SettingsEcho;
  readonly input: readonly TableUse[];
  readonly findings: readonly Finding[];
  readonly tables: readonly Table[];
  readonly provenance: Provenance;
  /** What a printed sheet needs and JSON does not carry. */
  readonly print: PrintMatter;
}

export type { SettingsEcho };

export interface Provenance extends Source {
  readonly settings: SettingsEcho;
  readonly version: string;
  readonly seed: number;
  /** What later figures were compared with, where they were. */
  readonly earlier?: EarlierProvenance;
}

export interface EarlierProvenance {
  readonly from: "workbook" | "report";
  readonly settings: Readonly<Record<string, unknown>>;
  readonly fingerprint: string;
  readonly version: string;
}

export interface PrintMatter {
  readonly skills: readonly Skill[];
  /** The cumulative curve of each row of age-when-met that could be estimated, in the order of its rows. */
  readonly curves: readonly AgeCurve[];
  /** The months of the place and area of the first row of referral-scan. */
  readonly scannedMonths: readonly ScannedMonth[];
  /** Null where the trend was not asked for. */
  readonly trend: TrendOverview | null;
  /** The headline figures of what changed since an earlier run; empty where none was given. */
  readonly bridges: readonly Bridge[];
  /** Tables that were asked for and that the workbook has nothing to make from. */
  readonly skipped: readonly TableId[];
  /** How many children are followed on the as-of date. */
  readonly followed: number;
  readonly everFollowed: number;
  /** Repair decisions in force, in words. */
  readonly decisions: readonly string[];
  /** Sentences with counts for the method sheet: gestation not recorded, blank `Entered`, looks outside enrolment. */
  readonly counted: readonly string[];
}

export interface AgeCurve {
  readonly skill: string;
  /** The values of the grouping columns, in their order; empty without grouping. */
  readonly group: readonly string[];
  /** Mass is spread evenly from `fromMonths` to `toMonths` (mean-length months); `shareTo` have met the skill by its end. */
  readonly steps: readonly { readonly fromMonths: number; readonly toMonths: number; readonly shareTo: number }[];
}
