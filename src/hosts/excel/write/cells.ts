/// <reference types="office-js" />
import { CELL_LOOKS, type CellLook } from "../../../workbook/looks";
import { numberFormatOfCell } from "../../../workbook/number-formats";
import { type LookArea, lookAreas } from "./look-areas";
import { rangeOf } from "./ranges";
import type { DateSystem } from "../../../age/serial";
import type { JobOptions } from "../../../workbook/host";
import type { SheetOut } from "../../../workbook/sheets";
import type { Patience } from "../run";
import { doSteps } from "./steps";
import { type ValueBlock, valueBlocks } from "./value-blocks";

/**
 * Writes values and looks, block by block: one request for the values of a block, then its looks. The first block goes with
 * the request that adds the sheet; gives the sheet's id.
 */
export async function writeCells(
  add: (first: ValueBlock | null) => Promise<string>,
  sheet: SheetOut,
  dateSystem: DateSystem,
  patience: Patience,
  options?: JobOptions,
): Promise<string> {
  let sheetId: string | null = null;
  for (const block of valueBlocks(sheet, dateSystem)) {
    if (sheetId === null) sheetId = await add(block);
    else await doSteps(sheetId, [(target) => putValues(target, block)], patience, options);
    if (block.left > 0) continue;
    const looks = lookAreas(sheet, block.top, block.top + block.values.length - 1);
    const steps = looks.map((look) => (target: Excel.Worksheet) => applyLook(target, look));
    await doSteps(sheetId, steps, patience, options);
  }
  return sheetId ?? add(null);
}

export function putValues(sheet: Excel.Worksheet, { top, left, values }: ValueBlock): void {
  const columns = values[0]?.length ?? 0;
  sheet.getRangeByIndexes(top, left, values.length, columns).values = values.map((row) => [...row]);
}

function applyLook(sheet: Excel.Worksheet, { area, style, format }: LookArea): void {
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
