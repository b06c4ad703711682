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
import type { SeriesLook } from "../../../workbook/sheets";
import { type Mark, MARKS } from "./marks";

/** Fills and lines differ in pattern before they differ in colour, so that a grey print says the same. */
export function applyLook(series: ChartSeries, look: SeriesLook): ChartSeries {
  const fill = fillOf(look);
  if (fill) return series.setFormat(fill);
  const line = LINES[look];
  return series.setFormat(line ? lineFormat(line) : new ChartFormat().setNoLine()).setMarker(markerOf(look));
}

function fillOf(look: SeriesLook): ChartFormat | null {
  switch (look) {
    case "solid":
      return solid(INK.accent);
    case "pale":
      return solid(INK.pale);
    case "clear":
      return new ChartFormat().setNoFill().setNoBorder();
    case "hollow":
      return solid(INK.paper);
    case "striped":
      return patterned(ChartPatternFillType.DiagonalStripesWideUpwards, INK.accent);
    case "lined":
      return patterned(ChartPatternFillType.VerticalStripesLight, INK.quiet);
    case "crossed":
      return patterned(ChartPatternFillType.OutlinedDiamondGrid, INK.text);
    default:
      return null;
  }
}

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

interface LineLook {
  readonly colour: string;
  readonly width: number;
  readonly dash: ChartLineDashType;
}

const LINES: Partial<Record<SeriesLook, LineLook>> = {
  line: { colour: INK.accent, width: 2.25, dash: ChartLineDashType.Solid },
  dashed: { colour: INK.text, width: 1.75, dash: ChartLineDashType.Dash },
  dottedLine: { colour: INK.quiet, width: 1.75, dash: ChartLineDashType.RoundDot },
  longDashed: { colour: INK.text, width: 1.75, dash: ChartLineDashType.LongDashDot },
  edge: { colour: INK.quiet, width: 1, dash: ChartLineDashType.Dash },
  joined: { colour: INK.accent, width: 2.25, dash: ChartLineDashType.Solid },
  joinedDashed: { colour: INK.text, width: 1.75, dash: ChartLineDashType.Dash },
  joinedDotted: { colour: INK.quiet, width: 1.75, dash: ChartLineDashType.RoundDot },
  joinedLongDashed: { colour: INK.text, width: 1.75, dash: ChartLineDashType.LongDashDot },
  band: { colour: INK.hatch, width: 0.75, dash: ChartLineDashType.Solid },
};

function lineFormat({ colour, width, dash }: LineLook): ChartFormat {
  return new ChartFormat().setLine(new ChartLine().setColor(Color.parse(colour)).setWidth(width).setDashType(dash));
}

function markerOf(look: SeriesLook): ChartMarker {
  const mark = MARKS[look];
  if (!mark) return new ChartMarker().setNone();
  const { shape, size, fill } = mark;
  return new ChartMarker().setType(SHAPES[shape]).setSize(size).setFormat(solid(fill));
}

const SHAPES: Readonly<Record<Mark["shape"], ChartMarkerType>> = {
  diamond: ChartMarkerType.Diamond,
  circle: ChartMarkerType.Circle,
  square: ChartMarkerType.Square,
  triangle: ChartMarkerType.Triangle,
  dash: ChartMarkerType.LongDash,
};
