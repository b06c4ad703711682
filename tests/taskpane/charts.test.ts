import { parseSettings } from "../../src/settings/settings";
import { fiveFindings } from "../../src/report/answer/five-findings";
import { bridgePicture } from "../../src/report/changed/bridge-picture";
import { pictureSheet } from "../../src/report/answer/picture";
import { reportOf } from "../support/report-of";
import { chartSpec } from "../../taskpane/worker/charts/spec";
import { previewOf } from "../../taskpane/worker/charts/preview";
import type { ChartOut, SheetOut } from "../../src/workbook/sheets";
import { sampleBook } from "./books";

/** The bars of two of the five findings. */
function charts() {
  const parsed = parseSettings({ asOf: "2026-09-30" }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join());
  const report = reportOf(sampleBook(), parsed.settings, ["referral-steps", "ratings"]);
  const pictures = fiveFindings(report).flatMap(({ picture }) => (picture ? [picture] : []));
  return { report, charts: pictures.map(pictureSheet) };
}

test("the numbers beside a chart are the report's own: the categories of an outcome add up to those rated", () => {
  const { report, charts: drawn } = charts();
  const table = report.tables.find(({ id }) => id === "ratings");
  const at = (key: string) => table?.columns.findIndex((column) => column.key === key) ?? -1;
  const preview = previewOf(drawn.at(-1)!);
  expect(preview.rows.length).toBeGreaterThan(0);
  for (const row of preview.rows) {
    const outcome = String(row[0]).replace(/: .*/, "");
    const second = (table?.rows ?? []).find((each) => each[at("outcome")] === outcome && each[at("statement")] === 2);
    expect(row.slice(1).reduce((sum, text) => sum + Number(text), 0)).toBe(second?.[at("of")]);
  }
});

test("every series has its fill in the drawing and its word in the legend", () => {
  const { charts: drawn } = charts();
  for (const each of drawn) {
    const spec = chartSpec(each, 280) as { encoding?: { fill?: { scale: { domain: string[]; range: string[] } } } };
    const scale = spec.encoding?.fill?.scale;
    const preview = previewOf(each);
    expect(preview.legend.map(({ name }) => name)).toEqual(scale?.domain);
    expect(preview.legend.map(({ paint }) => paint)).toEqual(scale?.range);
    expect(new Set(scale?.range).size).toBe(scale?.range.length);
    expect(preview.altText).not.toBe("");
  }
});

test("a chart is drawn with no colour of its own: each is one of the page's", () => {
  const { charts: drawn } = charts();
  for (const each of drawn) expect(JSON.stringify(chartSpec(each, 280))).not.toMatch(/#[0-9a-f]{3,8}\b/i);
});

test("bars of a bridge end where a scale that does not start at 0 begins", () => {
  const bridge = { subject: "children", earlier: 158, parts: [], later: 150, isFromReport: false };
  const chart = pictureSheet(bridgePicture(bridge, { earlier: "June", later: "September" }));
  expect(chart.chart.y.min).toBeGreaterThan(0);
  expect(chartSpec(chart, 280)).toMatchObject({ mark: { type: "bar", clip: true } });
});

test("a curve shows its window as a band from its opening to its close", () => {
  const range = (left: number) => ({ top: 0, bottom: 2, left, right: left });
  const sheet = {
    name: "Curves",
    columns: [],
    rows: [
      [4, 0, 5, 0.2],
      [9, 1, 6, 0.4],
      [4, 0, 8, 0.9],
    ],
  };
  const chart = {
    kind: "curve",
    title: "Sits",
    altText: "Sits, by age",
    at: { row: 0, column: 0 },
    widthPixels: 1,
    heightPixels: 1,
    legend: "bottom",
    x: { title: "Age in months; window 4.0 to 9.0 months", min: 0, max: 12, step: 3 },
    y: { title: "", min: 0, max: 1, format: "wholeShare" },
    series: [
      { name: "Window", x: range(0), y: range(1), look: "band" },
      { name: "Share met", x: range(2), y: range(3), look: "line" },
    ],
  } as const;
  const spec = chartSpec({ sheet, chart }, 280) as {
    layer?: { data: { values: unknown[] }; mark: { type: string } }[];
  };
  expect(spec.layer?.[0]).toMatchObject({ mark: { type: "rect" }, data: { values: [{ x: 4, x2: 9, y: 0, y2: 1 }] } });
  expect(previewOf({ sheet, chart }).rows).toEqual([
    ["Share met", "5", "20.0%"],
    ["Share met", "6", "40.0%"],
    ["Share met", "8", "90.0%"],
  ]);
});

type Layer = { data: { values: Record<string, unknown>[] }; mark: { type: string; shape?: string }; encoding: object };

function layersOf(spec: object): Layer[] {
  return (spec as { layer?: Layer[] }).layer ?? [];
}

/** A sheet of plain columns, and a chart over them. */
function drawn(rows: SheetOut["rows"], chart: Partial<ChartOut> & Pick<ChartOut, "kind" | "series">) {
  const sheet: SheetOut = { name: "Numbers", columns: [], rows };
  const usual = {
    title: "Title",
    altText: "Words",
    at: { row: 0, column: 0 },
    widthPixels: 1,
    heightPixels: 1,
  } as const;
  const axes = { x: { title: "" }, y: { title: "" }, legend: "none" } as const;
  const report = { sheet, chart: { ...usual, ...axes, ...chart } };
  return { layers: layersOf(chartSpec(report, 280)), spec: chartSpec(report, 280), preview: previewOf(report) };
}

const columnOf = (rows: number) => (left: number) => ({ top: 0, bottom: rows - 1, left, right: left });

test("lines are drawn as lines, broken where a value is missing, each with its marks", () => {
  const range = columnOf(3);
  const { layers, preview } = drawn(
    [
      ["Q1", 0.5, null, "1 of 2"],
      ["Q2", null, 0.6, "3 of 5"],
      ["Q3", 0.7, null, "7 of 10"],
    ],
    {
      kind: "line",
      series: [
        { name: "Share met", x: range(0), y: range(1), look: "joined" },
        { name: "After a stop", x: range(0), y: range(2), look: "joined", continues: true },
      ],
      y: { title: "", min: 0.4, max: 1, step: 0.1, format: "wholeShare" },
      told: [{ name: "Met", cells: range(3) }],
    },
  );
  expect(layers.map(({ mark }) => mark.type)).toEqual(["line", "point", "line", "point"]);
  expect(layers[0]?.data.values.map(({ x, run }) => [x, run])).toEqual([
    ["Q1", 0],
    ["Q3", 1],
  ]);
  expect(preview.headings).toEqual(["Bar", "Share met", "Met"]);
  expect(preview.rows).toEqual([
    ["Q1", "50.0%", "1 of 2"],
    ["Q2", "60.0%", "3 of 5"],
    ["Q3", "70.0%", "7 of 10"],
  ]);
  expect(preview.legend.map(({ name }) => name)).toEqual(["Share met"]);
});

test("columns with what was expected over them: two fills and a line", () => {
  const range = columnOf(2);
  const { layers, preview } = drawn(
    [
      ["2026-01", 3, 0, 0.5],
      ["2026-02", 0, 1, 0.75],
    ],
    {
      kind: "column stacked",
      series: [
        { name: "In the window", x: range(0), y: range(1), look: "solid" },
        { name: "Other months", x: range(0), y: range(2), look: "hollow" },
        { name: "Expected", x: range(0), y: range(3), look: "dashed" },
      ],
      y: { title: "Referrals", min: 0, max: 3, step: 1, format: "number" },
    },
  );
  expect(layers.map(({ mark }) => mark.type)).toEqual(["bar", "line"]);
  expect(layers[0]?.data.values).toHaveLength(4);
  expect(preview.rows[1]).toEqual(["2026-02", "0", "1", "0.75"]);
  expect(preview.legend.map(({ shape }) => shape)).toEqual(["fill", "fill", "line"]);
});

test("a named mark carries its name, and lines to read by stay out of the table", () => {
  const { layers, preview } = drawn(
    [
      [1, 0.5],
      [4, 2],
      [3, 1.5],
    ],
    {
      kind: "curve",
      series: [
        { name: "95%", x: columnOf(2)(0), y: columnOf(2)(1), look: "dashed", guide: true },
        {
          name: "North",
          x: { top: 2, bottom: 2, left: 0, right: 0 },
          y: { top: 2, bottom: 2, left: 1, right: 1 },
          look: "point",
          named: true,
        },
      ],
      x: { title: "Expected referrals", min: 0, max: 5, step: 1, format: "number" },
      y: { title: "Observed over expected", min: 0, max: 3, step: 1, format: "number" },
    },
  );
  expect(layers.map(({ mark }) => mark.type)).toEqual(["line", "point", "text"]);
  expect(layers[2]?.data.values).toMatchObject([{ x: 3, y: 1.5, name: "North" }]);
  expect(preview.headings).toEqual(["Series", "Expected referrals", "Observed over expected"]);
  expect(preview.rows).toEqual([["North", "3", "1.50"]]);
  expect(preview.legend.map(({ name }) => name)).toEqual(["95%"]);
});

test("an axis that only keeps rows apart is not drawn, nor told", () => {
  const { spec, preview } = drawn([[1.5, 2]], {
    kind: "curve",
    series: [{ name: "North: 3, expected 2.0", x: columnOf(1)(0), y: columnOf(1)(1), look: "point", named: true }],
    x: { title: "Ratio", min: 0, max: 2, step: 0.5, format: "number" },
    y: { title: "", min: 0, max: 3, hidden: true },
  });
  expect(JSON.stringify(spec)).toContain('"axis":null');
  expect(preview.rows).toEqual([["North: 3, expected 2.0", "1.50"]]);
});

test("parts of a bar are stacked in their order, and long labels go over several lines", () => {
  const range = columnOf(1);
  const { spec } = drawn([["Evaluated, of those received (12 of 18)", 12, 6]], {
    kind: "bar stacked",
    series: [
      { name: "Has taken the step", x: range(0), y: range(1), look: "solid" },
      { name: "Has not, or not yet", x: range(0), y: range(2), look: "hollow" },
    ],
    y: { title: "Referrals", min: 0, max: 18, step: 3, format: "number" },
  });
  expect(spec).toMatchObject({
    mark: { type: "bar" },
    encoding: { x: { stack: "zero", axis: { values: [0, 3, 6, 9, 12, 15, 18] } }, order: { field: "order" } },
  });
  expect(JSON.stringify(spec)).toContain('[\\"Evaluated, of those\\",\\"received (12 of 18)\\"]');
});
