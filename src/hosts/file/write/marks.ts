import { INK } from "../../../workbook/ink";
import type { SeriesLook } from "../../../workbook/sheets";

export interface Mark {
  /** As the file names it. */
  readonly shape: "diamond" | "circle" | "square" | "triangle" | "dash";
  /** Points. */
  readonly size: number;
  readonly fill: string;
}

/** A light mark is filled, not hollow: LibreOffice draws no outline, so that a hollow one would not be seen. */
export const MARKS: Partial<Record<SeriesLook, Mark>> = {
  point: { shape: "diamond", size: 9, fill: INK.text },
  lightPoint: { shape: "circle", size: 7, fill: INK.light },
  joined: { shape: "circle", size: 6, fill: INK.accent },
  joinedDashed: { shape: "square", size: 6, fill: INK.text },
  joinedDotted: { shape: "triangle", size: 7, fill: INK.quiet },
  joinedLongDashed: { shape: "diamond", size: 7, fill: INK.text },
  tick: { shape: "dash", size: 9, fill: INK.text },
};
