import type { LedgerEntryBody } from "./ledger-entry";
import type { ReleasedTable } from "./release-table";

/** A release that is protected and was attacked, before anything of it is written. */
export interface PreparedRelease {
  /** ISO dates. */
  readonly asOf: string;
  readonly from: string;
  readonly rule: ReleaseRule;
  readonly tables: readonly ReleasedTable[];
  /** Places where all or none of a group has something, 0% and 100%: for whoever releases, and in no file that leaves. */
  readonly flags: readonly string[];
  /** What an earlier release may give away together with this one and no equation ties, one sentence a kind. */
  readonly notCovered: readonly string[];
  readonly protection: ProtectionSummary;
  readonly attack: AttackSummary;
  /** What the ledger keeps. */
  readonly entry: LedgerEntryBody;
}

export interface ReleaseRule {
  readonly minimumCell: number;
  readonly method: "hide" | "round" | "ranges";
  /** What counts are rounded to; null where they are not. */
  readonly base: number | null;
  /** No rounded count is further than this from the true one; left out where counts are not rounded. */
  readonly mostOff?: number;
}

export interface ProtectionSummary {
  /** Counts of the release, and those of them that are hidden. */
  readonly counts: number;
  readonly hidden: number;
  /** Hidden because they are small themselves; the others keep these from being worked out. */
  readonly small: number;
  readonly loss: number;
  /** No pattern can lose less than this. */
  readonly bound: number;
  readonly stoppedEarly: boolean;
}

/** Safe by construction: a release that is not is a `Refusal`. */
export interface AttackSummary {
  readonly attacked: number;
  readonly witnesses: number;
}

/** Why nothing may leave, without a count. */
export interface Refusal {
  /** Each with the cheapest repair. */
  readonly places: readonly { readonly place: string; readonly repair: string }[];
  readonly proposals: readonly string[];
}
