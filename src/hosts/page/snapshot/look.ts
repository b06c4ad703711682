import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { CellFormat, CellStyle } from "../../../workbook/sheets";

/** Ink on paper and one accent. Every text colour stands at 4.5 to 1 or more on white and on `tint` (WCAG 2.2, 1.4.3). */
const INK = { text: "#1A1A1A", quiet: "#505050", accent: "#0B4F6C", tint: "#EEF2F5" } as const;

const NUMBER_FORMATS: Readonly<Record<CellFormat, string>> = {
  count: "#,##0",
  share: "0.0%",
  wholeShare: "0%",
  percent: '0.0"%"',
  months: "0.0",
  decimal2: "0.00",
  decimal3: "0.000",
  number: "General",
  date: "yyyy-mm-dd",
};

const TEXT = colour(INK.text);
const ACCENT = colour(INK.accent);
const WRAPPED: IStyleData = { tb: WrapStrategy.WRAP };
const BOLD: IStyleData = { bl: BooleanNumber.TRUE };
const TOP: IStyleData = { vt: VerticalAlign.TOP };
const MIDDLE: IStyleData = { vt: VerticalAlign.MIDDLE };
const TINTED: IStyleData = { bg: { rgb: INK.tint } };
const HEADING: IStyleData = {
  ...TEXT,
  ...BOLD,
  ...WRAPPED,
  ...TINTED,
  vt: VerticalAlign.BOTTOM,
  bd: { b: { s: BorderStyleTypes.THIN, cl: { rgb: INK.accent } } },
};

const STYLES: Readonly<Record<CellStyle, IStyleData>> = {
  title: { ...TEXT, ...BOLD, ...WRAPPED, ...MIDDLE, fs: 16 },
  subtitle: { ...colour(INK.quiet), ...WRAPPED, ...TOP },
  section: { ...ACCENT, ...BOLD, fs: 12, vt: VerticalAlign.BOTTOM },
  note: { ...TEXT, ...WRAPPED, ...TOP },
  heading: { ...HEADING, ht: HorizontalAlign.LEFT },
  headingRight: { ...HEADING, ht: HorizontalAlign.RIGHT },
  label: { ...TEXT, ...BOLD, ...WRAPPED, ...TOP },
  text: { ...TEXT, ...MIDDLE },
  wrapped: { ...TEXT, ...WRAPPED, ...MIDDLE },
  total: { ...TEXT, ...MIDDLE, ...TINTED, it: BooleanNumber.TRUE },
  marked: { ...ACCENT, ...BOLD, ...WRAPPED, ...TOP },
};

/** How a cell of a report stands in the grid. */
export function lookOf(style: CellStyle | undefined, format: CellFormat | undefined): IStyleData {
  const look = STYLES[style ?? "text"];
  return format ? { ...look, n: { pattern: NUMBER_FORMATS[format] }, ht: HorizontalAlign.RIGHT } : look;
}

/** How a date and the header row of a table stand in a workbook that was opened. */
export const DATE_LOOK: IStyleData = { n: { pattern: NUMBER_FORMATS.date } };
export const HEADER_LOOK: IStyleData = { ...HEADING, ht: HorizontalAlign.LEFT, tb: WrapStrategy.CLIP };

function colour(rgb: string): IStyleData {
  return { cl: { rgb } };
}
