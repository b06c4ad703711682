import {
  Chart,
  type ChartAxis,
  ChartDataLabel,
  ChartDataLabelPosition,
  ChartFont,
  ChartLegendPosition,
  ChartRange,
  ChartSeries,
  ChartType,
} from "wasm-xlsxwriter/web";
import { Color, type Worksheet } from "wasm-xlsxwriter/web";
import { INK } from "../../../workbook/ink";
import { FACE } from "../../../workbook/looks";
import { numberFormat } from "../../../workbook/number-formats";
import { cellText } from "../../../workbook/sheet-text";
import { isFill } from "../../../workbook/series-looks";
import type { AxisOut, ChartOut, SeriesOut, SheetOut } from "../../../workbook/sheets";
import type { CellRange } from "../../../workbook/workbook";
import { altTextThatFits } from "./alt-text";
import { applyLook } from "./series-look";

const TYPES: Readonly<Record<ChartOut["kind"], ChartType>> = {
  "column stacked": ChartType.ColumnStacked,
  "bar stacked": ChartType.BarStacked,
  "bar share stacked": ChartType.BarPercentStacked,
  "column share stacked": ChartType.ColumnPercentStacked,
  line: ChartType.Line,
  curve: ChartType.ScatterStraightWithMarkers,
};

const STANDING = ["xAxis", "yAxis"] as const;
/** The library's x axis lies flat, ours has the categories. */
const LYING = ["yAxis", "xAxis"] as const;

/** Adds the sheet's charts; every one carries its message in words for a screen reader. */
export function addCharts(target: Worksheet, sheet: SheetOut, sheetName: string): void {
  for (const chart of sheet.charts ?? []) {
    if (chart.altText.trim() === "")
      throw new RangeError("workbookBytes: a chart needs its message in words (altText)");
    target.insertChart(chart.at.row, chart.at.column, drawn(chart, sheetName));
  }
}

function drawn(out: ChartOut, sheetName: string): Chart {
  const chart = new Chart(TYPES[out.kind]);
  const over = out.kind === "column stacked" ? out.series.filter(({ look }) => !isFill(look)) : [];
  for (const series of out.series) if (!over.includes(series)) chart.pushSeries(seriesOf(series, sheetName));
  if (over.length > 0) chart.combine(lines(over, sheetName));
  if (out.title === "") chart.title().setHidden();
  else chart.title().setName(chartText(out.title)).setFont(font(9).setBold());
  const [x, y] = out.kind.startsWith("bar") ? LYING : STANDING;
  setAxis(chart[x](), out.x);
  setAxis(chart[y](), out.y);
  setLegend(chart, out.legend);
  chart.setAltText(altTextThatFits(cellText(out.altText)));
  chart.setWidth(out.widthPixels);
  chart.setHeight(out.heightPixels);
  return chart;
}

function lines(series: readonly SeriesOut[], sheetName: string): Chart {
  const chart = new Chart(ChartType.Line);
  for (const each of series) chart.pushSeries(seriesOf(each, sheetName));
  return chart;
}

function seriesOf(out: SeriesOut, sheetName: string): ChartSeries {
  const series = new ChartSeries()
    .setName(chartText(out.name))
    .setCategories(rangeOf(out.x, sheetName))
    .setValues(rangeOf(out.y, sheetName));
  if (out.named) series.setDataLabel(nameBeside(out.named));
  return applyLook(series, out.look);
}

function nameBeside(where: NonNullable<SeriesOut["named"]>): ChartDataLabel {
  const place = where === "right" ? ChartDataLabelPosition.Right : ChartDataLabelPosition.Above;
  return new ChartDataLabel().showSeriesName().setPosition(place).setFont(font(9));
}

function rangeOf({ top, left, bottom, right }: CellRange, sheetName: string): ChartRange {
  return ChartRange.newFromRange(sheetName, top, left, bottom, right);
}

function setAxis(axis: ChartAxis, out: AxisOut): void {
  axis.setFont(font(9));
  if (out.title !== "") axis.setName(chartText(out.title)).setNameFont(font(9).unsetBold());
  if (out.min !== undefined) axis.setMin(out.min);
  if (out.max !== undefined) axis.setMax(out.max);
  if (out.format) axis.setNumFormat(numberFormat(out.format));
}

function setLegend(chart: Chart, legend: ChartOut["legend"]): void {
  if (legend === "none") chart.legend().setHidden();
  else {
    const position = legend === "bottom" ? ChartLegendPosition.Bottom : ChartLegendPosition.Right;
    chart.legend().setPosition(position).setFont(font(9));
  }
}

function font(size: number): ChartFont {
  return new ChartFont().setName(FACE.name).setSize(size).setColor(Color.parse(INK.text));
}

/** The writer takes a text such as `=A1` or `North!A1` for a reference to cells; a blank keeps it a text. */
function chartText(text: string): string {
  return cellText(text).replace(/^=/, " =").replaceAll("!", "! ").trimEnd();
}
