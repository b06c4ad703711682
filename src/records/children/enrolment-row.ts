import type { Block } from "../headings/block";
import type { ChildRow } from "../tables/children";

/** One row of Children that is used: an enrolment. */
export interface EnrolmentRow {
  readonly block: Block;
  readonly row: number;
  /** The key of the child, after repair decisions. */
  readonly key: string;
  readonly value: ChildRow;
}
