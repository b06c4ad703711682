import { columnLetters } from "../../src/workbook/cells";
import type { CellFormat, CellValue, ChartOut, SeriesOut, SheetOut } from "../../src/workbook/sheets";
import type { CellRange } from "../../src/workbook/workbook";
import { legendEntry } from "./chart-looks";
import type { ChartPreview } from "./made";

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
  const words = { sheet: sheet.name, title: chart.title, altText: chart.altText, legend: legendOf(chart) };
  return chart.kind === "curve" ? { ...words, ...pointsTable(sheet, chart) } : { ...words, ...barsTable(sheet, chart) };
}

function legendOf({ kind, series }: ChartOut): ChartPreview["legend"] {
  return series.map(({ name, look }) => legendEntry(name, look, kind === "curve" || kind === "line"));
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

function barsTable(sheet: SheetOut, { series, x, y, kind }: ChartOut): Pick<ChartPreview, "headings" | "rows"> {
  const [first] = series;
  const labels = first ? valuesIn(sheet, first.x) : [];
  const columns = series.map((each) => valuesIn(sheet, each.y));
  // A share stacked chart draws shares of counts; its cells hold the counts.
  const format = kind.includes("share") ? "count" : y.format;
  return {
    headings: [x.title || "Bar", ...series.map(({ name }) => name)],
    rows: labels.map((label, row) => [
      String(label ?? ""),
      ...columns.map((column) => shown(column[row] ?? null, format)),
    ]),
  };
}

/** The breadth of a window is said in words; its strokes are no numbers to read. */
function pointsTable(sheet: SheetOut, { series, x, y }: ChartOut): Pick<ChartPreview, "headings" | "rows"> {
  const drawn = series.filter(({ look }) => look !== "band" && look !== "edge");
  return {
    headings: ["Series", "Age, months", "Share"],
    rows: drawn.flatMap((each) => pointRows(sheet, each, x.format, y.format)),
  };
}

function pointRows(sheet: SheetOut, series: SeriesOut, xFormat?: CellFormat, yFormat?: CellFormat): string[][] {
  const ys = valuesIn(sheet, series.y);
  return valuesIn(sheet, series.x).map((x, at) => [series.name, shown(x, xFormat), shown(ys[at] ?? null, yFormat)]);
}

function shown(value: CellValue, format: CellFormat | undefined): string {
  if (typeof value !== "number") return String(value ?? "");
  if (format === "wholeShare" || format === "share") return `${(100 * value).toFixed(1)}%`;
  return Number.isInteger(value) ? String(value) : value.toFixed(1);
}
