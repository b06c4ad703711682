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
  /** The questions that the release was asked; they lead its files. */
  readonly answered?: readonly AnsweredQuestion[];
}

/** A question with its figures as they may leave. */
export interface AnsweredQuestion {
  /** `plans-in-time`. */
  readonly id: string;
  readonly name: string;
  readonly asks: string;
  /** Id of the table that its figures are from. */
  readonly table: string;
  readonly figures: readonly AnswerFigure[];
}

/** A figure that answers a question: what it is about, and its sentence with its counts, or null where it is held back. */
export interface AnswerFigure {
  readonly about: string;
  readonly sentence: string | null;
  /** The rows of the table that it is from. */
  readonly rows: readonly number[];
}
