import { columnLetters } from "../../../src/workbook/cells";
import type { AxisOut, CellFormat, CellValue, ChartOut, SeriesOut, SheetOut } from "../../../src/workbook/sheets";
import type { CellRange } from "../../../src/workbook/workbook";
import { legendOf } from "./looks";
import type { ChartPreview } from "../report/made";

/** A chart with the sheet whose cells it draws. */
export interface ReportChart {
  readonly sheet: SheetOut;
  readonly chart: ChartOut;
}

export function chartsOf(sheets: readonly SheetOut[]): ReportChart[] {
  return sheets.flatMap((sheet) => (sheet.charts ?? []).map((chart) => ({ sheet, chart })));
}

/** The words of a chart, and the table that says the same. */
export function previewOf({ sheet, chart }: ReportChart): ChartPreview {
  const words = { sheet: sheet.name, title: chart.title, altText: chart.altText, legend: legendOf(chart.series) };
  return chart.kind === "curve" ? { ...words, ...pointsTable(sheet, chart) } : { ...words, ...barsTable(sheet, chart) };
}

/** The cells of a range of one column. */
export function valuesIn(sheet: SheetOut, range: CellRange): CellValue[] {
  const rows = sheet.rows.slice(range.top, range.bottom + 1);
  if (range.left !== range.right)
    throw new RangeError(`chart series in ${columnLetters(range.left)}: one column is wanted`);
  return rows.map((row) => {
    const cell = row[range.left] ?? null;
    return typeof cell === "object" && cell !== null ? cell.value : cell;
  });
}

function barsTable(
  sheet: SheetOut,
  { series, told = [], x, y, kind }: ChartOut,
): Pick<ChartPreview, "headings" | "rows"> {
  const [first] = series;
  const labels = first ? valuesIn(sheet, first.x) : [];
  // A share stacked chart draws shares of counts; its cells hold the counts.
  const format = kind.includes("share") ? "count" : y.format;
  const columns = [
    ...columnsOf(sheet, series),
    ...told.map(({ name, cells }) => ({ name, values: valuesIn(sheet, cells) })),
  ];
  return {
    headings: [x.title || "Bar", ...columns.map(({ name }) => name)],
    rows: labels.map((label, row) => [
      String(label ?? ""),
      ...columns.map(({ values }) => shown(values[row] ?? null, format)),
    ]),
  };
}

/** A series that goes on where another breaks off shares its column. */
function columnsOf(sheet: SheetOut, series: readonly SeriesOut[]): { name: string; values: CellValue[] }[] {
  const columns: { name: string; values: CellValue[] }[] = [];
  for (const { name, y, continues } of series) {
    const values = valuesIn(sheet, y);
    const before = columns.at(-1);
    if (continues && before) before.values = before.values.map((value, row) => value ?? values[row] ?? null);
    else columns.push({ name, values });
  }
  return columns;
}

/** What only guides the eye is no number to read: the breadth of a window is said in words. */
function pointsTable(sheet: SheetOut, { series, x, y }: ChartOut): Pick<ChartPreview, "headings" | "rows"> {
  const drawn = series.filter(({ look, guide }) => look !== "band" && look !== "edge" && !guide);
  const headings = ["Series", x.title.split(";")[0] || "Across", ...(y.hidden ? [] : [y.title || "Share"])];
  return { headings, rows: drawn.flatMap((each) => pointRows(sheet, each, x, y)) };
}

function pointRows(sheet: SheetOut, series: SeriesOut, x: AxisOut, y: AxisOut): string[][] {
  const ys = valuesIn(sheet, series.y);
  return valuesIn(sheet, series.x).flatMap((across, at) => {
    const up = ys[at] ?? null;
    if (up === null) return [];
    return [[series.name, shown(across, x.format), ...(y.hidden ? [] : [shown(up, y.format)])]];
  });
}

function shown(value: CellValue, format: CellFormat | undefined): string {
  if (typeof value !== "number") return String(value ?? "");
  if (format === "wholeShare" || format === "share") return `${(100 * value).toFixed(1)}%`;
  return Number.isInteger(value) ? String(value) : value.toFixed(Math.abs(value) < 10 ? 2 : 1);
}
