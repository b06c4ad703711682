/// <reference types="office-js" />
import { type CellLook, CELL_LOOKS } from "../../../workbook/looks";
import { numberFormatOfCell } from "../../../workbook/number-formats";
import type { LookArea } from "./look-areas";
import { rangeOf } from "./ranges";

export function applyLook(sheet: Excel.Worksheet, { area, style, format }: LookArea): void {
  const range = rangeOf(sheet, area);
  if (style) paint(range.format, CELL_LOOKS[style]);
  if (!format) return;
  // One format for all cells; the type only knows arrays.
  range.numberFormat = numberFormatOfCell(style, format) as unknown as string[][];
  range.format.horizontalAlignment = "Right";
}

function paint(format: Excel.RangeFormat, look: CellLook): void {
  const { font } = format;
  font.color = look.color;
  font.size = look.points;
  if (look.bold) font.bold = true;
  if (look.italic) font.italic = true;
  if (look.wraps) format.wrapText = true;
  if (look.fill) format.fill.color = look.fill;
  if (look.across) format.horizontalAlignment = ACROSS[look.across];
  if (look.indent !== undefined) format.indentLevel = look.indent;
  format.verticalAlignment = DOWN[look.down];
  if (look.ruled) underline(format, look.ruled);
}

const ACROSS = { left: "Left", center: "Center", right: "Right" } as const;
const DOWN = { top: "Top", middle: "Center", bottom: "Bottom" } as const;

/** Every row of the area has its line, not only the last. */
function underline(format: Excel.RangeFormat, color: string): void {
  for (const side of ["EdgeBottom", "InsideHorizontal"] as const) {
    const edge = format.borders.getItem(side);
    edge.style = "Continuous";
    edge.color = color;
  }
}
