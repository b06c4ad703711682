import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { INK } from "../../../workbook/ink";
import { numberFormat } from "../../../workbook/number-formats";
import type { CellFormat, CellStyle } from "../../../workbook/sheets";

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
  heldBack: { ...ACCENT, ...BOLD, ...MIDDLE, ht: HorizontalAlign.RIGHT },
};

/** How a cell of a report stands in the grid. */
export function lookOf(style: CellStyle | undefined, format: CellFormat | undefined): IStyleData {
  const look = STYLES[style ?? "text"];
  return format ? { ...look, n: { pattern: numberFormat(format) }, ht: HorizontalAlign.RIGHT } : look;
}

/** How a date and the header row of a table stand in a workbook that was opened. */
export const DATE_LOOK: IStyleData = { n: { pattern: numberFormat("date") } };
export const HEADER_LOOK: IStyleData = { ...HEADING, ht: HorizontalAlign.LEFT, tb: WrapStrategy.CLIP };

function colour(rgb: string): IStyleData {
  return { cl: { rgb } };
}
