/// <reference types="office-js" />
import { INK } from "../../../workbook/ink";
import { type Line, lineOf, type Mark, markOf, SERIES_LOOKS, type SeriesLook } from "../../../workbook/series-looks";

const DASHES = { solid: "Continuous", dash: "Dash", dots: "RoundDot", dashDot: "DashDot" } as const;

const MARKS = { diamond: "Diamond", circle: "Circle", square: "Square", triangle: "Triangle", dash: "Dash" } as const;

/** Office.js draws no patterns, so fills differ in lightness by a clear step each, all of them outlined. */
export function applySeriesLook(series: Excel.ChartSeries, look: SeriesLook): void {
  const drawn = SERIES_LOOKS[look];
  if (drawn.kind === "clear") return hideBar(series);
  if (drawn.kind === "fill") return fillBar(series, drawn.plain);
  const [line, mark] = [lineOf(look), markOf(look)];
  if (line) drawLine(series, line);
  else series.format.line.lineStyle = "None";
  if (mark) drawMarks(series, mark);
  else series.markerStyle = "None";
}

/** In the color of the paper: what is stacked on it seems to float. */
function hideBar({ format }: Excel.ChartSeries): void {
  format.fill.setSolidColor(INK.paper);
  format.line.lineStyle = "None";
}

function fillBar({ format }: Excel.ChartSeries, colour: string): void {
  format.fill.setSolidColor(colour);
  format.line.color = INK.quiet;
  format.line.weight = 0.75;
}

function drawLine(series: Excel.ChartSeries, { ink, points, dash }: Line): void {
  const { line } = series.format;
  line.color = INK[ink];
  line.weight = points;
  line.lineStyle = DASHES[dash];
  series.smooth = false;
}

function drawMarks(series: Excel.ChartSeries, { shape, size, ink }: Mark): void {
  series.markerStyle = MARKS[shape];
  series.markerSize = size;
  series.markerBackgroundColor = INK[ink];
  series.markerForegroundColor = INK.text;
}
