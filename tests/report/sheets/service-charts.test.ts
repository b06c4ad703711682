import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { funnelPoints } from "../../../src/report/sheets/funnel-points";
import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import { runsBetweenStops } from "../../../src/report/sheets/trend-runs";
import type { Table } from "../../../src/tables/table";
import type { CellRange } from "../../../src/workbook/workbook";
import type { CellValue, ChartOut, SheetOut } from "../../../src/workbook/sheets";
import { ratingsTable, referralsTable, scanTable, serviceReport, stepsTable, trendTable } from "./service-tables";

const all = [referralsTable(), scanTable(), stepsTable(), ratingsTable(), trendTable()];
const sheets = reportSheets(serviceReport(all));

test("every one of these tables has a sheet of charts before its rows", () => {
  expect(sheets.map(({ name }) => name).slice(1, 11)).toEqual([
    ...["Referrals, charts", "Referrals", "Referral scan, charts", "Referral scan"],
    ...["Referral steps, charts", "Referral steps", "Ratings, charts", "Ratings", "Trend, charts", "Trend"],
  ]);
});

test("charts read the cells that their series mean, inside their own sheet, and none is left without words", () => {
  for (const sheet of sheets) {
    for (const chart of sheet.charts ?? []) {
      expect(chart.altText.length).toBeGreaterThan(80);
      for (const { x, y } of chart.series) {
        expect(y.bottom - y.top).toBe(x.bottom - x.top);
        expect(cells(sheet, x).every((value) => value !== undefined)).toBe(true);
        expect(cells(sheet, y).every((value) => typeof value === "number" || value === null)).toBe(true);
      }
    }
  }
});

describe("referrals", () => {
  const { sheet, chart } = chartOf("Referrals, charts", 0);

  test("a line from limit to limit and a named diamond at the ratio, sites from the top", () => {
    const limits = chart.series.filter(({ look }) => look === "line").map((each) => pointsOf(sheet, each));
    const marks = chart.series.filter(({ named }) => named);
    expect(limits).toEqual([
      [
        [0.86, 2],
        [3.94, 2],
      ],
      [
        [0.01, 1],
        [1.39, 1],
      ],
    ]);
    expect(marks.map((each) => [each.name, ...pointsOf(sheet, each)])).toEqual([
      ["North: 8, expected 4.0", [2, 2]],
      ["River: 1, expected 4.0", [0.25, 1]],
    ]);
    expect(chart.title).toBe("As many as expected (1) lie within the exact limits of 2 of 2 sites");
    expect(chart.altText).toContain("North: 8 referrals, 4.0 expected, ratio 2.00, limits 0.86 to 3.94.");
  });

  test("a limit beyond the axis is cut, and the words say so", () => {
    const wide = referralsTable();
    const rows = wide.rows.map((row) => row.map((value, at) => (row[0] === "site" && at === 10 ? 9 : value)));
    const drawn = chartOf("Referrals, charts", 0, { ...wide, rows });
    expect(drawn.chart.x.max).toBe(6);
    expect(drawn.chart.altText).toContain("limits 0.86 to 9.00. River");
    expect(drawn.chart.altText).toMatch(/Limits above 6 are cut off\.$/);
    const [line] = drawn.chart.series.filter(({ look }) => look === "line");
    expect(line && pointsOf(drawn.sheet, line)[1]).toEqual([6, 2]);
  });

  test("the funnel has its four lines and each site at its expected number and ratio", () => {
    const funnel = chartOf("Referrals, charts", 1);
    expect(funnel.chart.series.filter(({ guide }) => guide).map(({ name }) => name)).toEqual([
      ...["95%, lower", "95%, upper", "99.8%, lower", "99.8%, upper"],
    ]);
    const sites = funnel.chart.series.filter(({ named }) => named);
    expect(sites.map((each) => pointsOf(funnel.sheet, each)[0])).toEqual([
      [4, 2],
      [4, 0.25],
    ]);
    expect(funnel.chart.title).toContain("0 of 2 ratios");
  });

  /** Poisson with mean 4: P(X <= 1) = 0.0916 is the first above 0.025, P(X <= 8) = 0.9786 the first above 0.975. */
  test("by hand: 95% of places with 4 expected lie between 1/4 and 8/4", () => {
    const [lower, upper] = funnelPoints(4, 10).map(({ points }) => points.at(-1));
    expect([lower, upper]).toEqual([
      [4, 0.25],
      [4, 2],
    ]);
  });

  test("a funnel line breaks where it is above the axis", () => {
    for (const { points } of funnelPoints(4, 3)) {
      for (const point of points) if (point !== null) expect(point[1] as number).toBeLessThanOrEqual(3);
    }
  });
});

test("scan: the window's months are filled, the others hollow, what was expected a line", () => {
  const { sheet, chart } = chartOf("Referral scan, charts", 0);
  const columns = Object.fromEntries(chart.series.map(({ look, y }) => [look, cells(sheet, y)]));
  expect(columns).toEqual({ solid: [0, 4, 3, 0], hollow: [1, 0, 0, 0], dashed: [0.5, 0.5, 0.75, 1] });
  expect(chart.title).toBe("River, speech: 7 referrals in the filled months, where 1.3 were expected");
  expect(chart.altText).toContain("In the other 2 months: 1 where 1.5 were expected.");
});

describe("steps", () => {
  test("each step is drawn of its own denominator", () => {
    const { sheet, chart } = chartOf("Referral steps, charts", 0);
    const [taken, not] = chart.series;
    expect(taken && cells(sheet, taken.x)).toEqual([
      "Received, of those referred (18 of 20)",
      "Evaluated, of those received (12 of 18)",
      "Eligible, of those evaluated, with an answer (8 of 10)",
      "Plan, of those eligible (6 of 8)",
    ]);
    expect(taken && cells(sheet, taken.y)).toEqual([18, 12, 8, 6]);
    expect(not && cells(sheet, not.y)).toEqual([2, 6, 2, 2]);
  });

  test("the 45 days: one bar of the judged, in time and by what stood in the way", () => {
    const { sheet, chart } = chartOf("Referral steps, charts", 1);
    expect(chart.series.map(({ y }) => cells(sheet, y))).toEqual([[5], [1], [2], [0], [1]]);
    expect(chart.altText).toContain("late, family reason 1; late, program reason 2;");
  });
});

test("ratings: a to e of those rated, each with a look of its own, and both statements with their numbers", () => {
  const { sheet, chart } = chartOf("Ratings, charts", 0);
  expect(chart.series.map(({ y }) => cells(sheet, y))).toEqual([[1], [2], [0], [3], [2], [2]]);
  expect(new Set(chart.series.map(({ look }) => look)).size).toBe(6);
  expect(chart.altText).toContain("Getting things done, 10 rated: a 1, b 2, a or b 0, c 3, d 2, e 2");
  const statements = chartOf("Ratings, charts", 1);
  const [holds] = statements.chart.series;
  expect(holds && cells(statements.sheet, holds.x)).toEqual([
    "Getting things done: grew faster by exit (5 of 8)",
    "Getting things done: left at the level of peers (4 of 10)",
  ]);
});

describe("trend", () => {
  const { sheet, chart } = chartOf("Trend, charts", 0);
  const columns = Object.fromEntries(chart.series.map(({ name, y }) => [name, cells(sheet, y)]));

  test("no line runs through a stop of correction, and the provisional quarter stands apart", () => {
    expect(columns).toEqual({
      "Sites weighted alike": [0.5, 0.7, null],
      "Share met": [0.5, null, null],
      "Share met, after a stop": [null, 0.75, null],
      "Share met, provisional": [null, null, 0.75],
    });
    expect(chart.series.find(({ name }) => name.endsWith("provisional"))?.look).toBe("lightPoint");
    const text = valuesOf(sheet).flat().join(" ");
    expect(text).toContain("No line leads into a quarter within which correcting of age stopped");
    expect(text).toContain("2026-Q2 (2).");
  });

  test("title and words have the counts behind every share", () => {
    expect(chart.title).toBe("Gross motor: 6 of 12 to 12 of 16");
    expect(chart.altText).toContain("2026-Q1 6 of 12; 2026-Q2 9 of 12; 2026-Q3 12 of 16.");
    expect(chart.told?.map(({ cells: range }) => cells(sheet, range))).toEqual([["6 of 12", "9 of 12", "12 of 16"]]);
  });

  test("a line each for groups, up to four of them", () => {
    const table = trendTable();
    const grouped = {
      ...table,
      columns: [{ key: "Site", label: "Site", unit: "text" as const }, ...table.columns],
      rows: ["North", "River", "Hill", "Lake", "Moor"].flatMap((site) => table.rows.map((row) => [site, ...row])),
    };
    const drawn = chartOf("Trend, charts", 0, grouped);
    const lines = drawn.chart.series.filter(({ name }) => /^\w+$/.test(name));
    expect(lines.map(({ name, look }) => [name, look])).toEqual([
      ["North", "joined"],
      ["River", "joinedDashed"],
      ["Hill", "joinedDotted"],
      ["Lake", "joinedLongDashed"],
    ]);
    expect(drawn.chart.series.filter(({ continues }) => continues)).toHaveLength(8);
    expect(valuesOf(drawn.sheet).flat().join(" ")).toContain("Of 5 groups the first 4 are drawn.");
  });

  test("on paper a row a skill and a column a quarter; beside it every row as a table", () => {
    const paper = named("Trend");
    const rows = valuesOf(paper);
    expect(rows[2]?.slice(0, 5)).toEqual(["Skill", "Area", "2026-Q1", "2026-Q2", "2026-Q3"]);
    expect(rows[3]?.slice(0, 3)).toEqual(["Walks some steps alone", "gross motor", "33.3% (2 of 6)\n20.0% to 90.0%"]);
    expect(paper.print?.area?.right).toBe(4);
    const range = paper.tables?.[0]?.range as CellRange;
    expect([range.left, range.bottom - range.top]).toEqual([6, 6]);
    expect(rows[range.top]?.slice(range.left)).toContain("provisional");
    expect(rows[range.bottom]?.slice(range.left)).toContain("yes");
  });
});

test("stops part a line into runs that never share a column with their neighbour", () => {
  expect(runsBetweenStops([1, 2, 3, 4, 5], [false, false, true, false, true])).toEqual([
    [1, 2, null, null, 5],
    [null, null, 3, 4, null],
  ]);
});

test("where there is nothing to draw there is no sheet of charts", () => {
  const empty = [
    { ...referralsTable(), rows: referralsTable().rows.filter(([dimension]) => dimension === "area") },
    { ...scanTable(), rows: [] },
    { ...stepsTable(), rows: stepsTable().rows.map(([step]) => [step ?? null, 0, 0, null, null, null, null, 0, 0]) },
    { ...ratingsTable(), rows: [["Getting things done", 0, 0, 0, 0, 0, 1, 0, 0, null, 0]] },
    { ...trendTable(), rows: [] },
  ];
  for (const table of empty) {
    const names = reportSheets(serviceReport([table])).map(({ name }) => name);
    expect(names.filter((name) => name.endsWith("charts"))).toEqual([]);
  }
});

test("no word of praise or blame, and no traffic light", () => {
  const report = serviceReport(all);
  const sentences = all.flatMap((table) => sentencesOf(table, report));
  const words = sheets.flatMap(({ charts }) => (charts ?? []).flatMap(({ title, altText }) => [title, altText]));
  const text = [...sentences, ...words].join(" ");
  expect(text.match(/\b(best|worst|fail\w*|poor\w*|good|bad|better|worse|red|amber|green)\b/gi)).toBeNull();
});

function named(name: string, from: readonly SheetOut[] = sheets): SheetOut {
  const sheet = from.find((each) => each.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
}

function chartOf(name: string, index: number, table?: Table): { sheet: SheetOut; chart: ChartOut } {
  const sheet = named(name, table ? reportSheets(serviceReport([table])) : sheets);
  return { sheet, chart: sheet.charts?.[index] as ChartOut };
}

function valuesOf(sheet: SheetOut): CellValue[][] {
  return sheet.rows.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell)));
}

function cells(sheet: SheetOut, { top, bottom, left }: CellRange): (CellValue | undefined)[] {
  return valuesOf(sheet)
    .slice(top, bottom + 1)
    .map((row) => row[left]);
}

function pointsOf(sheet: SheetOut, { x, y }: { x: CellRange; y: CellRange }): unknown[][] {
  const ys = cells(sheet, y);
  return cells(sheet, x).map((each, at) => [each, ys[at]]);
}
