import type { DotPicture } from "../../../src/tables/definition-check/words";
import type { RecordsFound } from "../records/found";

/** A report that was made, less its sheets. */
export interface Made {
  /** The as-of date, in words. */
  readonly label: string;
  readonly fileName: string;
  readonly period: string;
  readonly followed: number;
  readonly everFollowed: number;
  readonly tables: readonly MadeTable[];
  readonly findings: readonly MadeFinding[];
  /** Its first page, as the workbook calls it. */
  readonly firstSheet: string;
}

/** One of the findings of the first page. */
export interface MadeFinding {
  readonly id: string;
  readonly headline: string;
  readonly below: readonly string[];
  readonly chart: ChartPreview | null;
  /** Labels of the figures whose rows can be shown and whose definitions can be checked. */
  readonly figures: readonly string[];
}

/** One figure under every definition that could be defended. */
export interface FirmAnswer {
  readonly sentence: string;
  readonly picture: DotPicture;
  readonly notes: readonly string[];
}

/** The rows that a figure is made of, and some of their cells. */
export interface BehindAnswer {
  readonly rows: number;
  readonly children: number;
  readonly cells: readonly { readonly sheet: string; readonly cell: string }[];
}

export interface MadeTable {
  readonly id: string;
  readonly name: string;
  readonly internal: boolean;
  readonly rows: number;
  /** What the table says, most important first. */
  readonly sentences: readonly string[];
}

/** One chart of the report: its words, and the numbers behind it. */
export interface LegendEntry {
  readonly name: string;
  readonly shape: "fill" | "line" | "diamond" | "circle" | "square" | "triangle" | "stroke";
  /** As SVG paint. */
  readonly paint: string;
  readonly dash: string;
}

export interface ChartPreview {
  readonly legend: readonly LegendEntry[];
  readonly sheet: string;
  readonly title: string;
  readonly altText: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Built {
  readonly found: RecordsFound;
  /** Null where the records cannot be used; `found.failure` says why. */
  readonly made: Made | null;
  /** Rows that the last report had and the workbook has not; then nothing was made, unless the person goes on. */
  readonly lost: readonly string[];
}
