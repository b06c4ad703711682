import { BOX } from "../../cohort/boxes";

/**
 * The causes of a change, step by step (METHOD.md, section 6). A child that did two things in one step counts under the first
 * of this order.
 */
export const PARTS = [
  "enteredLate",
  "corrected",
  "removed",
  "definition",
  "joined",
  "left",
  "grewIn",
  "grewOut",
  "metSince",
  "lost",
  "needsRecheck",
  "checkedAgain",
] as const;
export type Part = (typeof PARTS)[number];

/** What the rows of two workbooks can differ in. */
export const ROW_PARTS = ["enteredLate", "corrected", "removed"] as const satisfies readonly Part[];

/** The counts of met-by-band that are followed. */
export const MEASURES = ["children", "assessed", "met"] as const;
export type Measure = (typeof MEASURES)[number];

/** Whether a child in a box counts: by measure, then by box. */
export const COUNTS: Readonly<Record<Measure, readonly boolean[]>> = {
  children: boxes(() => true),
  assessed: boxes((box) => box !== BOX.outOfDate && box !== BOX.notAssessed),
  met: boxes((box) => isMet(box)),
};

function isMet(box: number): boolean {
  return box === BOX.hadAtFirstLook || box === BOX.gained;
}

/**
 * What a later day did to a child in one cell: to the cell that it came from, or to the one that it went to.
 *
 * @param box - the box that the child is in now
 */
export function timePart(isSameGroup: boolean, isSameCell: boolean, box: number, end: "from" | "to"): Part {
  if (!isSameGroup) return end === "from" ? "left" : "joined";
  if (!isSameCell) return end === "from" ? "grewOut" : "grewIn";
  if (isMet(box)) return "metSince";
  if (box === BOX.lost) return "lost";
  return box === BOX.outOfDate || box === BOX.notAssessed ? "needsRecheck" : "checkedAgain";
}

function boxes(counts: (box: number) => boolean): boolean[] {
  return Object.values(BOX).map(counts);
}
