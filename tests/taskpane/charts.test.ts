import { parseSettings } from "../../src/settings/settings";
import { reportSheets } from "../../src/report/sheets/report-sheets";
import { runReport } from "../../src/report/run";
import { chartSpec } from "../../taskpane/worker/chart-spec";
import { chartsOf, previewOf } from "../../taskpane/worker/chart-preview";
import { sampleBook } from "./books";

function charts() {
  const parsed = parseSettings({ asOf: "2026-09-30" }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join());
  const report = runReport(sampleBook(), parsed.settings, { tables: ["met-by-band"], decisions: [] });
  return { report, charts: chartsOf(reportSheets(report)) };
}

test("the numbers beside a chart are the report's own: the boxes of an area add up to its child-skills", () => {
  const { report, charts: drawn } = charts();
  const [first] = drawn;
  if (!first) throw new Error("no chart");
  const preview = previewOf(first);
  const table = report.tables[0];
  const at = (key: string) => table?.columns.findIndex((column) => column.key === key) ?? -1;
  for (const row of preview.rows) {
    const area = String(row[0]).replace(/ \(.*/, "").toLowerCase();
    const rows = (table?.rows ?? []).filter((each) => each[at("skill")] === "all" && each[at("area")] === area);
    const children = rows.reduce((sum, each) => sum + Number(each[at("children")]), 0);
    expect(row.slice(1).reduce((sum, text) => sum + Number(text), 0)).toBe(children);
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
