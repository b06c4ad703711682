import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { CELL_LOOKS } from "../../../workbook/looks";
import { numberFormat } from "../../../workbook/number-formats";
import type { CellFormat, CellStyle } from "../../../workbook/sheets";

const ACROSS = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT };
const DOWN = { top: VerticalAlign.TOP, middle: VerticalAlign.MIDDLE, bottom: VerticalAlign.BOTTOM };

/** How a cell of a report stands in the grid. */
export function lookOf(style: CellStyle | undefined, format: CellFormat | undefined): IStyleData {
  const look = drawn(style ?? "text");
  return format ? { ...look, n: { pattern: numberFormat(format) }, ht: HorizontalAlign.RIGHT } : look;
}

/** How a date and the header row of a table stand in a workbook that was opened. */
export const DATE_LOOK: IStyleData = { n: { pattern: numberFormat("date") } };
export const HEADER_LOOK: IStyleData = { ...drawn("heading"), tb: WrapStrategy.CLIP };

function drawn(style: CellStyle): IStyleData {
  const { color, points, bold, italic, wraps, fill, across, down, ruled } = CELL_LOOKS[style];
  return {
    cl: { rgb: color },
    fs: points,
    vt: DOWN[down],
    ...(bold && { bl: BooleanNumber.TRUE }),
    ...(italic && { it: BooleanNumber.TRUE }),
    ...(wraps && { tb: WrapStrategy.WRAP }),
    ...(fill && { bg: { rgb: fill } }),
    ...(across && { ht: ACROSS[across] }),
    ...(ruled && { bd: { b: { s: BorderStyleTypes.THIN, cl: { rgb: ruled } } } }),
  };
}
