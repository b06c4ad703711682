import {
  ChartFormat,
  ChartLine,
  ChartLineDashType,
  ChartMarker,
  ChartMarkerType,
  ChartPatternFill,
  ChartPatternFillType,
  type ChartSeries,
  ChartSolidFill,
  Color,
} from "wasm-xlsxwriter/web";
import { INK } from "../../../workbook/ink";
import { type Line, lineOf, type Mark, markOf, SERIES_LOOKS, type SeriesLook } from "../../../workbook/series-looks";

export function applyLook(series: ChartSeries, look: SeriesLook): ChartSeries {
  const drawn = SERIES_LOOKS[look];
  if (drawn.kind === "clear") return series.setFormat(new ChartFormat().setNoFill().setNoBorder());
  if (drawn.kind === "fill")
    return series.setFormat(drawn.pattern ? patterned(PATTERNS[drawn.pattern], INK[drawn.ink]) : solid(INK[drawn.ink]));
  const line = lineOf(look);
  return series.setFormat(line ? lineFormat(line) : new ChartFormat().setNoLine()).setMarker(markerOf(look));
}

const PATTERNS = {
  stripes: ChartPatternFillType.DiagonalStripesWideUpwards,
  lines: ChartPatternFillType.VerticalStripesLight,
  diamonds: ChartPatternFillType.OutlinedDiamondGrid,
} as const;

function solid(colour: string): ChartFormat {
  return outlined().setSolidFill(new ChartSolidFill().setColor(Color.parse(colour)));
}

function patterned(pattern: ChartPatternFillType, colour: string): ChartFormat {
  const fill = new ChartPatternFill()
    .setPattern(pattern)
    .setForegroundColor(Color.parse(colour))
    .setBackgroundColor(Color.parse(INK.paper));
  return outlined().setPatternFill(fill);
}

function outlined(): ChartFormat {
  return new ChartFormat().setBorder(new ChartLine().setColor(Color.parse(INK.quiet)).setWidth(0.75));
}

const DASHES = {
  solid: ChartLineDashType.Solid,
  dash: ChartLineDashType.Dash,
  dots: ChartLineDashType.RoundDot,
  dashDot: ChartLineDashType.LongDashDot,
} as const;

function lineFormat({ ink, points, dash }: Line): ChartFormat {
  const line = new ChartLine().setColor(Color.parse(INK[ink])).setWidth(points).setDashType(DASHES[dash]);
  return new ChartFormat().setLine(line);
}

function markerOf(look: SeriesLook): ChartMarker {
  const mark = markOf(look);
  if (!mark) return new ChartMarker().setNone();
  return new ChartMarker().setType(SHAPES[mark.shape]).setSize(mark.size).setFormat(solid(INK[mark.ink]));
}

const SHAPES: Readonly<Record<Mark["shape"], ChartMarkerType>> = {
  diamond: ChartMarkerType.Diamond,
  circle: ChartMarkerType.Circle,
  square: ChartMarkerType.Square,
  triangle: ChartMarkerType.Triangle,
  dash: ChartMarkerType.LongDash,
};
