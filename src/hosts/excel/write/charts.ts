/// <reference types="office-js" />
import { INK } from "../../../workbook/ink";
import { numberFormat } from "../../../workbook/number-formats";
import type { JobOptions } from "../../../workbook/host";
import { isFill } from "../../../workbook/series-looks";
import type { AxisOut, ChartOut, SeriesOut, SheetOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import { applySeriesLook } from "./series-looks";
import { inExcel, type Patience } from "../run";

const TYPES: Readonly<Record<ChartOut["kind"], Excel.ChartType | "XYScatterLines">> = {
  "column stacked": "ColumnStacked" as Excel.ChartType,
  "bar stacked": "BarStacked" as Excel.ChartType,
  "bar share stacked": "BarStacked100" as Excel.ChartType,
  "column share stacked": "ColumnStacked100" as Excel.ChartType,
  line: "Line" as Excel.ChartType,
  curve: "XYScatterLines",
};

const POINTS_PER_PIXEL = 0.75;

/** A chart takes some 20 KB of a request. */
const CHARTS_AT_ONCE = 15;

export async function drawCharts(
  sheetId: string,
  { charts = [] }: SheetOut,
  patience: Patience,
  options?: JobOptions,
): Promise<void> {
  for (let first = 0; first < charts.length; first += CHARTS_AT_ONCE) {
    const draw = async (context: Excel.RequestContext, attempt: number) => {
      const sheet = context.workbook.worksheets.getItem(sheetId);
      if (attempt > 0) await clearFrom(first, context, sheet);
      for (const chart of charts.slice(first, first + CHARTS_AT_ONCE)) drawChart(sheet, chart);
      await context.sync();
    };
    await inExcel(draw, patience, options);
  }
}

/** Takes away what an earlier try of the request drew: the sheet is new, so every chart on it is one of these. */
async function clearFrom(first: number, context: Excel.RequestContext, { charts }: Excel.Worksheet): Promise<void> {
  charts.load("items/name");
  await context.sync();
  for (const chart of charts.items.slice(first)) chart.delete();
}

function drawChart(sheet: Excel.Worksheet, out: ChartOut): void {
  const [first, ...rest] = out.series;
  if (!first) throw new RangeError("addSheets: a chart needs a series");
  const by = first.y.left === first.y.right ? "Columns" : "Rows";
  const chart = sheet.charts.add(TYPES[out.kind] as Excel.ChartType, rangeOf(sheet, first.y), by);
  setSeries(sheet, chart.series.getItemAt(0), first, out.kind);
  for (const each of rest) setSeries(sheet, chart.series.add(each.name), each, out.kind);
  if (out.title === "") chart.title.visible = false;
  else {
    chart.title.text = out.title;
    setFont(chart.title.format.font, 9, true);
  }
  setAxis(chart.axes.categoryAxis, out.x);
  setAxis(chart.axes.valueAxis, out.y);
  chart.axes.valueAxis.majorGridlines.format.line.color = INK.rule;
  setLegend(chart.legend, out.legend);
  place(sheet, chart, out);
}

function setSeries(sheet: Excel.Worksheet, series: Excel.ChartSeries, out: SeriesOut, kind: ChartOut["kind"]): void {
  series.name = out.name;
  series.setValues(rangeOf(sheet, out.y));
  series.setXAxisValues(rangeOf(sheet, out.x));
  if (kind === "column stacked" && !isFill(out.look)) series.chartType = "Line";
  else if (kind.endsWith("stacked")) series.gapWidth = 45;
  if (out.named) nameBeside(series, out.named);
  applySeriesLook(series, out.look);
}

function nameBeside(series: Excel.ChartSeries, where: NonNullable<SeriesOut["named"]>): void {
  series.hasDataLabels = true;
  series.dataLabels.showSeriesName = true;
  series.dataLabels.showValue = false;
  series.dataLabels.position = where === "right" ? "Right" : "Top";
  setFont(series.dataLabels.format.font, 9);
}

function setAxis(axis: Excel.ChartAxis, out: AxisOut): void {
  setFont(axis.format.font, 9);
  if (out.title === "") axis.title.visible = false;
  else {
    axis.title.text = out.title;
    setFont(axis.title.format.font, 9);
  }
  if (out.min !== undefined) axis.minimum = out.min;
  if (out.max !== undefined) axis.maximum = out.max;
  if (out.step !== undefined) axis.majorUnit = out.step;
  if (out.format) axis.numberFormat = numberFormat(out.format);
  if (out.reversed) axis.reversePlotOrder = true;
  if (out.labelEvery === 0) axis.tickLabelPosition = "None";
  else if (out.labelEvery !== undefined) axis.tickLabelSpacing = out.labelEvery;
  if (out.hidden) axis.visible = false;
}

function setLegend(legend: Excel.ChartLegend, place: ChartOut["legend"]): void {
  if (place === "none") {
    legend.visible = false;
    return;
  }
  legend.visible = true;
  legend.position = place === "bottom" ? "Bottom" : "Right";
  setFont(legend.format.font, 9);
}

function setFont(font: Excel.ChartFont, points: number, bold = false): void {
  font.size = points;
  font.color = INK.text;
  font.bold = bold;
}

function place(sheet: Excel.Worksheet, chart: Excel.Chart, { at, widthPixels, heightPixels }: ChartOut): void {
  chart.setPosition(sheet.getRangeByIndexes(at.row, at.column, 1, 1));
  chart.width = widthPixels * POINTS_PER_PIXEL;
  chart.height = heightPixels * POINTS_PER_PIXEL;
}
