import { BooleanNumber, CellValueType, type ICellData, type IStyleData, type IWorksheetData } from "@univerjs/core";
import { isoOf } from "../../../age/day";
import { serialOf } from "../../../age/serial";
import type { CellOut, CellValue, ChartOut, ColumnOut, SheetOut, StyledCell } from "../../../workbook/sheets";
import type { CellRange } from "../../../workbook/workbook";
import { lookOf } from "./look";
import { columnPixels, rowPixels, SPARE } from "./sizes";
import type { Slices } from "./slices";

type Row = Record<number, ICellData>;

const USUAL_COLUMN_CHARACTERS = 9;
/** The grid's own, in pixels. */
const USUAL_ROW_HEIGHT = 24;

/** A sheet of a report as the grid holds it, made in slices. Where a chart would stand there is its sentence. */
export async function reportSheet(sheet: SheetOut, slices: Slices): Promise<Partial<IWorksheetData>> {
  const looks = new Looks();
  const cellData: Record<number, Row> = {};
  for (const [row, cells] of sheet.rows.entries()) {
    cellData[row] = rowCells(cells, sheet.columns, looks);
    if (row % 64 === 0) await slices.rest();
  }
  const places = (sheet.charts ?? []).map((chart) => chartPlace(chart, sheet.columns));
  sheet.charts?.forEach((chart, index) => putChartSentence(cellData, chart, places[index] as CellRange, looks));
  return {
    cellData,
    rowCount: Math.max(sheet.rows.length + SPARE.rows, SPARE.leastRows),
    columnCount: Math.max(sheet.columns.length + SPARE.columns, SPARE.leastColumns),
    columnData: Object.fromEntries(sheet.columns.map(({ width }, at) => [at, { w: columnPixels(width) }])),
    rowData: rowData(sheet),
    mergeData: [...(sheet.merged ?? []), ...places].map(asGridRange),
    showGridlines: sheet.gridlines === false ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    ...frozen(sheet),
  };
}

function rowCells(cells: readonly CellOut[], columns: readonly ColumnOut[], looks: Looks): Row {
  const row: Row = {};
  cells.forEach((cell, column) => {
    if (cell !== null) row[column] = gridCell(styled(cell, columns[column]), looks);
  });
  return row;
}

function styled(cell: Exclude<CellOut, null>, column: ColumnOut | undefined): StyledCell {
  if (typeof cell === "object") return cell;
  const { format, style } = column ?? {};
  return { value: cell, ...(format && { format }), ...(style && { style }) };
}

function gridCell({ value, format, style }: StyledCell, looks: Looks): ICellData {
  if (format === "date" && typeof value === "number") return dateCell(value, style, looks);
  const s = looks.get(style, typeof value === "number" ? format : undefined);
  return value === null ? { s } : { ...valueCell(value), s };
}

function dateCell(day: number, style: StyledCell["style"], looks: Looks): ICellData {
  const serial = serialOf(day, 1900);
  // The grid, like Excel, knows no day before January 1, 1900.
  if (serial < 1) return { ...valueCell(isoOf(day)), s: looks.get(style, undefined) };
  return { ...valueCell(serial), s: looks.get(style, "date") };
}

function valueCell(value: NonNullable<CellValue>): ICellData {
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: CellValueType.STRING };
}

/** One object for each look, shared by its cells. */
class Looks {
  private readonly made = new Map<string, IStyleData>();

  get(style: StyledCell["style"], format: StyledCell["format"]): IStyleData {
    const key = `${style} ${format}`;
    const known = this.made.get(key) ?? lookOf(style, format);
    this.made.set(key, known);
    return known;
  }
}

function putChartSentence(cellData: Record<number, Row>, chart: ChartOut, place: CellRange, looks: Looks): void {
  const row = (cellData[place.top] ??= {});
  row[place.left] = {
    ...valueCell(`Chart, drawn in the saved file: ${chart.altText}`),
    s: looks.get("note", undefined),
  };
}

/** Where the chart would be, so that the sentence wraps in the room kept for it. */
function chartPlace({ at, widthPixels, heightPixels }: ChartOut, columns: readonly ColumnOut[]): CellRange {
  let right = at.column;
  for (let room = widthPixels; right < at.column + 40; right += 1) {
    room -= columnPixels(columns[right]?.width ?? USUAL_COLUMN_CHARACTERS);
    if (room <= 0) break;
  }
  return {
    top: at.row,
    left: at.column,
    bottom: at.row + Math.max(Math.floor(heightPixels / USUAL_ROW_HEIGHT), 2) - 1,
    right,
  };
}

function rowData({ rowHeights }: SheetOut): NonNullable<IWorksheetData["rowData"]> {
  const rows = [...(rowHeights ?? [])].map(([row, points]) => [row, { h: rowPixels(points), ia: BooleanNumber.FALSE }]);
  return Object.fromEntries(rows) as NonNullable<IWorksheetData["rowData"]>;
}

function frozen({ frozen: fixed }: SheetOut): Partial<IWorksheetData> {
  if (!fixed) return {};
  const { rows, columns } = fixed;
  return { freeze: { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 } };
}

function asGridRange({ top, left, bottom, right }: CellRange) {
  return { startRow: top, startColumn: left, endRow: bottom, endColumn: right };
}
