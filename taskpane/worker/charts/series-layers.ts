import type { CellValue, SeriesOut } from "../../../src/workbook/sheets";
import { CHART_INK, type LineLook, lineLookOf, type MarkLook, markLookOf } from "./looks";

interface Place {
  readonly x: CellValue;
  readonly y: CellValue;
}

/** One series of lines and marks as layers of a Vega-Lite chart whose axes are named x and y. */
export function seriesLayers(series: SeriesOut, places: readonly Place[], encoding: object, middle?: number): object[] {
  const [line, mark] = [lineLookOf(series.look), markLookOf(series.look)];
  return [
    ...(line ? [lineLayer(line, places, encoding)] : []),
    ...(mark ? [markLayer(mark, places, encoding)] : []),
    ...(series.named ? [nameLayer(series, places, encoding, middle)] : []),
  ];
}

/** A line breaks where a value is missing: each run of values is a line of its own. */
function lineLayer({ colour, width, dash }: LineLook, places: readonly Place[], encoding: object) {
  let run = 0;
  const values = places.map(({ x, y }, at) => ({ x, y, at, run: y === null ? (run += 1) : run }));
  return {
    data: { values: values.filter(({ y }) => y !== null) },
    mark: { type: "line", color: colour, strokeWidth: width, strokeDash: dash, clip: true },
    encoding: { ...encoding, order: { field: "at" }, detail: { field: "run" } },
  };
}

function markLayer({ shape, size, paint }: MarkLook, places: readonly Place[], encoding: object) {
  const outline = { filled: true, color: paint, stroke: shape === "stroke" ? paint : CHART_INK.text };
  return {
    data: { values: places.filter(({ y }) => y !== null) },
    mark: { type: "point", shape, size, opacity: 1, strokeWidth: shape === "stroke" ? 2 : 0.75, ...outline },
    encoding,
  };
}

/** The name right of its mark, or above it and towards the middle of the chart. */
function nameLayer({ name, named }: SeriesOut, [first]: readonly Place[], encoding: object, middle = 0): object {
  const align = named !== "right" && typeof first?.x === "number" && first.x > middle ? "right" : "left";
  const away = named === "right" ? { dx: 8, dy: 1 } : { dx: align === "right" ? 6 : -6, dy: -12 };
  return {
    data: { values: first ? [{ ...first, name }] : [] },
    mark: { type: "text", align, ...away, fontSize: 11, color: CHART_INK.text },
    encoding: { ...encoding, text: { field: "name" } },
  };
}
