import "./measure-text";
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
