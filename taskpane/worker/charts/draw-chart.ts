import { logger, None, parse, View } from "vega";
import { expressionInterpreter } from "vega-interpreter";
import { compile } from "vega-lite";
import type { ReportChart } from "./preview";
import { chartSpec } from "./spec";

/** The chart as SVG text. Expressions are interpreted, never compiled, as the page's policy demands. */
export async function drawChart(chart: ReportChart, width: number): Promise<string> {
  const { spec } = compile(chartSpec(chart, width), { logger: logger(None) });
  const view = new View(parse(spec, {}, { ast: true }), { expr: expressionInterpreter, renderer: "none" });
  try {
    return await view.toSVG();
  } finally {
    view.finalize();
  }
}

/**
 * Lets Vega measure text in a worker, where it looks for a document's canvas in vain and guesses widths half as wide
 * again: it is given the worker's own canvas instead.
 */
const scope = globalThis as { document?: unknown; OffscreenCanvas?: new (width: number, height: number) => unknown };
const { OffscreenCanvas: Canvas } = scope;
if (Canvas && scope.document === undefined) scope.document = { createElement: () => new Canvas(1, 1) };

export {};
