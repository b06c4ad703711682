import type { Skill } from "../../records/records";
import type { ReleaseRule } from "../prepared";

/** What words need beside the figures shown: nothing of it says anything about a child. */
export interface WordsContext {
  /** ISO dates. */
  readonly asOf: string;
  readonly from: string;
  readonly rule: ReleaseRule;
  /** Confidence level of the intervals shown. */
  readonly level: number;
  readonly skills: readonly Skill[];
  /** Ids of the skills that pictures show, where they were chosen. */
  readonly pictured?: readonly string[];
}
