/// <reference types="office-js" />
import { INK } from "../../../workbook/ink";
import type { SeriesLook } from "../../../workbook/sheets";

/**
 * Office.js draws no patterns, so fills differ in lightness by a clear step each, all of them outlined, and lines in
 * their dashes: a grey print tells them apart.
 */
const FILLS: Partial<Record<SeriesLook, string>> = {
  crossed: INK.text,
  solid: INK.accent,
  lined: "#7A7A7A",
  striped: "#8FB4C6",
  pale: INK.pale,
  hollow: INK.paper,
};

interface Line {
  readonly colour: string;
  readonly points: number;
  readonly dash: "Continuous" | "Dash" | "RoundDot" | "DashDot";
}

const LINES: Partial<Record<SeriesLook, Line>> = {
  line: { colour: INK.accent, points: 2.25, dash: "Continuous" },
  dashed: { colour: INK.text, points: 1.75, dash: "Dash" },
  dottedLine: { colour: INK.quiet, points: 1.75, dash: "RoundDot" },
  longDashed: { colour: INK.text, points: 1.75, dash: "DashDot" },
  edge: { colour: INK.quiet, points: 1, dash: "Dash" },
  joined: { colour: INK.accent, points: 2.25, dash: "Continuous" },
  joinedDashed: { colour: INK.text, points: 1.75, dash: "Dash" },
  joinedDotted: { colour: INK.quiet, points: 1.75, dash: "RoundDot" },
  joinedLongDashed: { colour: INK.text, points: 1.75, dash: "DashDot" },
  band: { colour: INK.hatch, points: 0.75, dash: "Continuous" },
};

interface Mark {
  readonly style: "Diamond" | "Circle" | "Square" | "Triangle" | "Dash";
  readonly size: number;
  readonly fill: string;
}

const MARKS: Partial<Record<SeriesLook, Mark>> = {
  point: { style: "Diamond", size: 9, fill: INK.text },
  lightPoint: { style: "Circle", size: 7, fill: INK.light },
  joined: { style: "Circle", size: 6, fill: INK.accent },
  joinedDashed: { style: "Square", size: 6, fill: INK.text },
  joinedDotted: { style: "Triangle", size: 7, fill: INK.quiet },
  joinedLongDashed: { style: "Diamond", size: 7, fill: INK.text },
  tick: { style: "Dash", size: 9, fill: INK.text },
};

export function applySeriesLook(series: Excel.ChartSeries, look: SeriesLook): void {
  if (look === "clear") return hideBar(series);
  const fill = FILLS[look];
  if (fill) return fillBar(series, fill);
  const [line, mark] = [LINES[look], MARKS[look]];
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

function drawLine(series: Excel.ChartSeries, { colour, points, dash }: Line): void {
  const { line } = series.format;
  line.color = colour;
  line.weight = points;
  line.lineStyle = dash;
  series.smooth = false;
}

function drawMarks(series: Excel.ChartSeries, { style, size, fill }: Mark): void {
  series.markerStyle = style;
  series.markerSize = size;
  series.markerBackgroundColor = fill;
  series.markerForegroundColor = INK.text;
}
