import type { Day } from "../../age/day";
import type { TableColumn } from "../table";
import type { Measure, Part } from "./parts";

/** One cell of met-by-band by its names. */
export interface CellName {
  /** A value for each column that either side groups by; null where its side does not group by it. */
  readonly group: readonly (string | null)[];
  readonly skill: string;
  readonly area: string;
  readonly band: string;
}

/** One count of one cell, earlier and later, and what happened between. */
export interface ChangedCell extends CellName {
  readonly measure: Measure;
  readonly earlier: number;
  /** By part, in the order of PARTS; null where a report alone cannot tell it. */
  readonly parts: readonly (number | null)[];
  readonly later: number;
}

/** Why counts changed between two runs, cell by cell. */
export interface Changes {
  readonly columns: readonly TableColumn[];
  readonly earlierDay: Day;
  readonly laterDay: Day;
  /** True where only the counts of an earlier report were at hand. */
  readonly isFromReport: boolean;
  readonly cells: readonly ChangedCell[];
  /** The same over all groups and ages: who only grew older, or went to another group, is no change here. */
  readonly whole: readonly ChangedCell[];
  /** Empty unless asked for: internal. */
  readonly behind: readonly BehindPart[];
}

/** One child behind one part of one count: internal. */
export interface BehindPart extends CellName {
  readonly child: string;
  readonly measure: Measure;
  readonly part: Part;
  readonly change: number;
}
