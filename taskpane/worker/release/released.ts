import type { Decision } from "../../../src/records/corrections/decisions";
import type { ProtectionSummary, ReleaseRule } from "../../../src/release/prepared";
import type { TextFinding } from "../../../src/release/text-check/check-text";
import type { CountsPrinted } from "../../../src/report/release/counts-printed";
import type { Settings } from "../../../src/settings/settings";
import type { ReleasableId } from "../../../src/tables/table";
import type { QuestionId } from "../../../src/release/answers/questions";
import type { RecordsFound } from "../records/found";

export interface ReleaseAsk {
  readonly settings: Settings;
  readonly decisions: readonly Decision[];
  readonly tables: readonly ReleasableId[];
  /** The questions that the figures are to answer; none where whole tables are wanted. */
  readonly questions: readonly QuestionId[];
  /** The text of the ledger; null where none was opened. */
  readonly ledger: string | null;
}

export interface ReleaseBuilt {
  readonly found: RecordsFound;
  /** Null where the records cannot be used; `found.failure` says why. */
  readonly outcome: ReleaseOutcome | null;
}

export type ReleaseOutcome =
  | { readonly kind: "made"; readonly made: ReleaseMade }
  | { readonly kind: "refused"; readonly refused: ReleaseRefusal };

/** What was tried to show more; null where the records cannot be used. */
export interface ReleaseTried {
  readonly found: RecordsFound;
  readonly ways: readonly TriedWay[] | null;
}

/** One way to ask, what it showed, and the entries that ask so. */
export interface TriedWay {
  readonly text: string;
  readonly showsMore: boolean;
  readonly entries: { readonly edges: string; readonly from: string; readonly by: readonly string[] };
}

/** A question with its answer as it leaves. */
export interface AnsweredPreview {
  readonly asks: string;
  readonly lines: readonly string[];
}

/** A release that is protected and was attacked, as the pane shows it. */
export interface ReleaseMade {
  /** The as-of date, in words. */
  readonly label: string;
  readonly period: string;
  /** `release-2026-09-30`, to which each file puts its ending. */
  readonly stem: string;
  readonly rule: ReleaseRule;
  readonly protection: ProtectionSummary;
  /** Of the tables as they are printed. */
  readonly printed: CountsPrinted;
  /** The questions that were asked; none where whole tables were. */
  readonly answers: readonly AnsweredPreview[];
  /** Of the shares that were asked for. */
  readonly shares: { readonly shown: number; readonly wanted: number };
  readonly attack: { readonly attacked: number; readonly witnesses: number };
  readonly tables: readonly ReleasedPreview[];
  /** 0% and 100% of a group: for whoever releases, and in no file. */
  readonly flags: readonly string[];
  readonly notCovered: readonly string[];
  /** Releases of the ledger that it is protected against; null where no release log was opened. */
  readonly earlier: number | null;
}

export interface ReleasedPreview {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly population: string;
  /** The heading of the column that names a row, then those of the figures. */
  readonly named: string;
  readonly headings: readonly string[];
  readonly counts: { readonly rows: number; readonly sentences: number };
  /** The first rows and sentences; the rest is asked for as it is looked at. */
  readonly rows: readonly PreviewRow[];
  readonly sentences: readonly string[];
  readonly footnote: string;
  readonly method: string;
  readonly notes: readonly string[];
}

/** What names the row, what it has in common with its neighbours, and its figures as text. `*` is held back. */
export interface PreviewRow {
  readonly name: string;
  readonly group: string;
  readonly figures: readonly string[];
}

export interface ReleaseRefusal {
  readonly places: readonly { readonly place: string; readonly repair: string }[];
  readonly proposals: readonly string[];
}

/** What a ledger holds, or one sentence that says what is wrong with it. */
export type LedgerRead =
  | {
      readonly releases: number;
      /** One line a release: what, for when, under which rule. */
      readonly lines: readonly string[];
      /** As-of date of the last release, in words; null where there is none. */
      readonly last: string | null;
      /** To be kept elsewhere, by whoever wants to notice a release log cut short. */
      readonly head: string | null;
    }
  | { readonly message: string };

export type ReleaseFormat = "xlsx" | "csv" | "svg";

export interface ProseChecked {
  readonly findings: readonly TextFinding[];
}
