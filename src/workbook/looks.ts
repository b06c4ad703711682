import { INK } from "./ink";
import type { CellStyle } from "./sheets";

/**
 * The face of every file. Arial has the same widths as the free Liberation Sans, so that a page breaks its lines alike in
 * Excel and in LibreOffice; Calibri has no such twin on most machines without Office. Sheets added in Excel keep its own face.
 */
export const FACE = { name: "Arial", points: 10 } as const;

/** How a cell looks, for every host to draw in its own way. */
export interface CellLook {
  readonly color: string;
  readonly points: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly wraps?: boolean;
  readonly fill?: string;
  readonly across?: "left" | "center" | "right";
  readonly indent?: number;
  readonly down: "top" | "middle" | "bottom";
  /** A thin line below the cell, in this color. */
  readonly ruled?: string;
}

const TEXT = { color: INK.text, points: FACE.points, down: "middle" } as const;
const READ = { color: INK.text, points: FACE.points, wraps: true, down: "top" } as const;
const HEADING = { ...TEXT, bold: true, wraps: true, fill: INK.tint, down: "bottom", ruled: INK.accent } as const;
/** Print that is read beside figures, never smaller than 8.5 points on paper. */
const SMALL_POINTS = 9;
const SMALL = { ...TEXT, points: SMALL_POINTS } as const;
const SMALL_HEADING = { ...HEADING, points: SMALL_POINTS } as const;
const STEP = { ...SMALL, across: "center", ruled: INK.rule } as const;
const BOX = { ...READ, points: 9.5, fill: INK.tint, indent: 1 } as const;

export const CELL_LOOKS: Readonly<Record<CellStyle, CellLook>> = {
  title: { ...READ, bold: true, points: 16, down: "middle" },
  subtitle: { ...READ, color: INK.quiet },
  section: { ...TEXT, color: INK.accent, bold: true, points: 11, down: "bottom" },
  note: READ,
  heading: { ...HEADING, across: "left" },
  headingRight: { ...HEADING, across: "right", indent: 1 },
  label: { ...READ, bold: true },
  text: TEXT,
  wrapped: { ...READ, down: "middle" },
  total: { ...TEXT, italic: true, fill: INK.tint },
  marked: { ...READ, color: INK.accent, bold: true },
  heldBack: { ...TEXT, color: INK.accent, bold: true, across: "right", indent: 1 },
  repeated: { ...TEXT, color: INK.light },
  headline: { ...READ, bold: true, points: 11.5 },
  small: { ...READ, color: INK.quiet, points: SMALL_POINTS },
  boxTitle: { ...BOX, bold: true, color: INK.accent, points: 11, down: "middle" },
  box: BOX,
  cell: { ...SMALL, wraps: true, ruled: INK.rule },
  cellMiddle: { ...SMALL, across: "center", ruled: INK.rule },
  cellRight: { ...SMALL, across: "right", indent: 1, ruled: INK.rule },
  cellHeading: { ...SMALL_HEADING, across: "left" },
  cellHeadingMiddle: { ...SMALL_HEADING, across: "center" },
  cellHeadingRight: { ...SMALL_HEADING, across: "right", indent: 1 },
  step0: STEP,
  step1: { ...STEP, fill: INK.step1 },
  step2: { ...STEP, fill: INK.step2 },
  step3: { ...STEP, fill: INK.step3 },
  step0Past: { ...STEP, bold: true },
  step1Past: { ...STEP, bold: true, fill: INK.step1 },
  step2Past: { ...STEP, bold: true, fill: INK.step2 },
  step3Past: { ...STEP, bold: true, fill: INK.step3 },
};
