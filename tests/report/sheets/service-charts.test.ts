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

describe("referrals", () => {
  const { sheet, chart } = chartOf("Referrals", 0);

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
      ["North", [2, 2]],
      ["River", [0.25, 1]],
    ]);
    expect(chart.altText).toContain("North: 8 referrals, 4.0 expected, ratio 2.00, limits 0.86 to 3.94.");
  });

  test("a limit beyond the axis is cut, and the words say so", () => {
    const wide = referralsTable();
    const rows = wide.rows.map((row) => row.map((value, at) => (row[0] === "site" && at === 10 ? 9 : value)));
    const drawn = chartOf("Referrals", 0, { ...wide, rows });
    expect(drawn.chart.x.max).toBe(6);
    expect(drawn.chart.altText).toContain("limits 0.86 to 9.00. River");
    expect(drawn.chart.altText).toMatch(/Limits above 6 are cut off\.$/);
    const [line] = drawn.chart.series.filter(({ look }) => look === "line");
    expect(line && pointsOf(drawn.sheet, line)[1]).toEqual([6, 2]);
  });

  test("the funnel has its four lines and each site at its expected number and ratio", () => {
    const funnel = chartOf("Referrals", 1);
    expect(funnel.chart.series.filter(({ guide }) => guide).map(({ name }) => name)).toEqual([
      ...["95%, lower", "95%, upper", "99.8%, lower", "99.8%, upper"],
    ]);
    const sites = funnel.chart.series.filter(({ named }) => named);
    expect(sites.map((each) => pointsOf(funnel.sheet, each)[0])).toEqual([
      [4, 2],
      [4, 0.25],
    ]);
    expect(funnel.chart.title).toContain("0 of 2 places");
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

test("clusters: the cluster's months are filled, the others hollow, what was expected a line", () => {
  const { sheet, chart } = chartOf("Where referrals clustered", 0);
  const columns = Object.fromEntries(chart.series.map(({ look, y }) => [look, cells(sheet, y)]));
  expect(columns).toEqual({ solid: [0, 4, 3, 0], hollow: [1, 0, 0, 0], dashed: [0.5, 0.5, 0.75, 1] });
  expect(chart.altText).toContain("River had 7 speech referrals in December 2025 to January 2026");
});

describe("steps", () => {
  test("one bar that narrows: each step as long as those who took it, behind it those who did not", () => {
    const { sheet, chart } = chartOf("From referral to plan", 0);
    const [taken, not] = chart.series;
    expect(taken && cells(sheet, taken.x)).toEqual([
      "Referred: 20",
      "Received: 18 of 20",
      "Evaluated: 12 of 18",
      "Found eligible: 8 of 10",
      "Plan in place: 6 of 8",
    ]);
    expect(taken && cells(sheet, taken.y)).toEqual([20, 18, 12, 8, 6]);
    expect(not && cells(sheet, not.y)).toEqual([0, 2, 6, 2, 2]);
  });

  test("the plans due: in time, and by what was in the way; nothing drawn where all were in time", () => {
    const { sheet, chart } = chartOf("From referral to plan", 1);
    expect(chart.series.map(({ y }) => cells(sheet, y))).toEqual([[5], [1], [2], [1]]);
    expect(chart.altText).toContain("late for a reason of the program 2");
    const inTime = stepsTable().rows.map((row) =>
      row[0] === "plan" ? row.map((value, at) => (at === 8 ? 5 : value)) : row,
    );
    const page = named("From referral to plan", reportSheets(serviceReport([{ ...stepsTable(), rows: inTime }])));
    expect(page.charts).toHaveLength(1);
  });
});

test("ratings: a to e of those rated, each with a look of its own, and both statements with their counts", () => {
  const { sheet, chart } = chartOf("Outcome levels", 0);
  expect(chart.series.map(({ y }) => cells(sheet, y))).toEqual([[1], [2], [3], [2], [2]]);
  expect(new Set(chart.series.map(({ look }) => look)).size).toBe(5);
  expect(chart.altText).toContain("Getting things done: a 1, b 2, c 3, d 2, e 2");
  expect(valuesOf(sheet).flat()).toEqual(expect.arrayContaining(["5 of 8", "4 of 10"]));
});

describe("trend", () => {
  const { sheet, chart } = chartOf("How to read", 0);

  test("no line runs through a stop of correction, and the provisional quarter is apart", () => {
    expect(chart.series.map(({ y }) => cells(sheet, y))).toEqual([
      [0.5, null, null],
      [null, 0.75, null],
      [null, null, 0.75],
    ]);
    expect(chart.series.at(-1)?.look).toBe("lightPoint");
  });

  test("words and the page of the trend have the counts behind every share", () => {
    expect(chart.altText).toContain(
      "January to March 2026 6 of 12; April to June 2026 9 of 12; July to September 2026 12 of 16.",
    );
    expect(chart.told?.map(({ cells: range }) => cells(sheet, range))).toEqual([["6 of 12", "9 of 12", "12 of 16"]]);
    expect(valuesOf(named("Trend")).find(([area]) => area === "Gross motor")).toEqual(
      expect.arrayContaining(["6 of 12", "9 of 12", "12 of 16"]),
    );
  });

  test("groups each have a row of their own", () => {
    const table = trendTable();
    const columns = [{ key: "Site", label: "Site", unit: "text" as const }, ...table.columns];
    const rows = ["North", "River"].flatMap((site) => table.rows.map((row) => [site, ...row]));
    const page = named("Trend", reportSheets(serviceReport([{ ...table, columns, rows }])));
    expect(
      valuesOf(page)
        .filter(([area]) => area === "Gross motor")
        .map((row) => row[1]),
    ).toEqual(["North", "River"]);
  });
});

test("stops part a line into runs that never share a column with their neighbour", () => {
  expect(runsBetweenStops([1, 2, 3, 4, 5], [false, false, true, false, true])).toEqual([
    [1, 2, null, null, 5],
    [null, null, 3, 4, null],
  ]);
});

test("where there is nothing to draw no chart is drawn", () => {
  const empty = [
    { ...referralsTable(), rows: referralsTable().rows.filter(([dimension]) => dimension === "area") },
    { ...scanTable(), rows: [] },
    {
      ...stepsTable(),
      rows: stepsTable().rows.map(([step]) => [step ?? null, 0, 0, null, null, null, null, 0, 0, null]),
    },
    { ...ratingsTable(), rows: [["Getting things done", 0, 0, 0, 0, 0, 1, 0, 0, null, 0]] },
    { ...trendTable(), rows: [] },
  ];
  for (const table of empty) {
    const drawn = reportSheets(serviceReport([table])).flatMap(({ charts }) => charts ?? []);
    expect(drawn.map(({ altText }) => altText)).toEqual([]);
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
