import { fiveFindings } from "../../../src/report/answer/five-findings";
import { pictureSheet } from "../../../src/report/answer/picture";
import type { Table } from "../../../src/tables/table";
import { ageWhenMetTable, smallReport } from "../sheets/fixture";
import { ratingsTable, referralsTable, scanTable, serviceReport, stepsTable } from "../sheets/service-tables";

/** Invented counts: 40 skills past a CDC window, 30 checked, 24 met; 12 past a WHO window, 10 checked, 10 met. */
const EXPECTED: string = "expected-by-now";

function expectedTable(): Table {
  const counts = ["pastWindow", "met", "notMet", "lost", "needsRecheck", "notChecked", "checked"];
  return {
    id: EXPECTED as Table["id"],
    title: "Skills expected by now",
    population: "Invented children",
    columns: [
      ...["skill", "area", "kind"].map((key) => ({ key, label: key, unit: "text" as const })),
      ...counts.map((key) => ({ key, label: key, unit: "count" as const })),
    ],
    rows: [
      ["SP1", "speech", "0.75", 40, 24, 5, 1, 6, 4, 30],
      ["all", "speech", "0.75", 40, 24, 5, 1, 6, 4, 30],
      ["all", "gross motor", "0.99", 12, 10, 0, 0, 2, 0, 10],
    ],
    notes: [],
  };
}

const report = serviceReport([
  expectedTable(),
  ageWhenMetTable(),
  referralsTable(),
  scanTable(),
  stepsTable(),
  ratingsTable(),
]);
const findings = fiveFindings(report);
const headlineOf = (id: string, all = findings) => all.find((each) => each.id === id)?.headline;

test("each of the five says what was found, with its counts", () => {
  expect(findings.map(({ id }) => id)).toEqual([
    "expected-by-now",
    "reached-by-age",
    "referral-to-plan",
    "clusters",
    "outcome-levels",
  ]);
  expect(headlineOf("expected-by-now")).toBe(
    "Of 30 up-to-date checks of skills that 75 or more in 100 children do by the child's age, 24 (80%) were met.",
  );
  expect(headlineOf("referral-to-plan")).toBe("Of 9 plans due, 5 were in place within 45 days.");
  expect(headlineOf("clusters")).toBe(
    "River had 7 speech referrals in December 2025 to January 2026, where 1.3 were expected.",
  );
  expect(headlineOf("outcome-levels")).toBe("At exit, 4 of 10 children were at the level of children their age.");
});

test("windows without a source alone are said to be the program's own, and not to be missing", () => {
  const table = expectedTable();
  const own = { ...table, rows: [["all", "speech", "none", 91, 88, 3, 0, 0, 0, 91]] };
  const [first] = fiveFindings(serviceReport([own]));
  expect(first?.headline).toBe("Of 91 up-to-date checks of skills past the program's own ages, 88 (97%) were met.");
  expect(first?.below.join(" ")).toMatch(/have no source/);
  expect(first?.picture?.altText).toContain("Speech: 88 of 91");
});

test("windows of two kinds are never added up", () => {
  const [first] = findings;
  expect(first?.below[0]).toBe("Of 10 checks of skills that 99 in 100 children do by the child's age: 10.");
  expect(first?.below[1]).toContain("12 skills need a recheck or were never checked");
  expect(first?.picture?.kind === "bar share stacked" && first.picture.bars).toEqual([
    { label: "Speech: 24 of 30", values: [24, 6, 10] },
    { label: "Gross motor, 99 in 100: 10 of 10", values: [10, 0, 2] },
  ]);
});

/** A percent of fewer than 20 says more than the counts do: common practice of statistical offices, no source. */
test("no percent from fewer than 20 in a headline", () => {
  for (const { headline } of findings) if (headline.includes("%")) expect(headline).toMatch(/ 30 .*\(80%\)/);
});

test("without a cluster beyond chance nothing is called one, and the smallest that would show is named", () => {
  const quiet = fiveFindings(serviceReport([referralsTable(), scanTable(0.4)]));
  expect(headlineOf("clusters", quiet)).toBe("No place had more referrals than its children's ages explain.");
  const below = quiet.find(({ id }) => id === "clusters")?.below[0];
  expect(below).toMatch(/^9 referrals in 300 child-months\. With so few, only a site at \d\.\d times/);
});

test("a picture of no cluster marks no month: it has each site beside what was expected of it", () => {
  const quiet = fiveFindings(serviceReport([referralsTable(), scanTable(0.4)]));
  const { picture } = quiet.find(({ id }) => id === "clusters") ?? {};
  expect(picture?.kind === "bar stacked" && picture.bars).toEqual([
    { label: "North: 8, 4.0 expected", values: [8] },
    { label: "River: 1, 4.0 expected", values: [1] },
  ]);
});

test("several referrals of one child are said beside the cluster", () => {
  const note =
    "River, speech, 2025-12 to 2026-01: 7 referrals of 3 children. Several referrals of one child are counted one by one.";
  const scan = { ...scanTable(), notes: [note] };
  const said = fiveFindings(serviceReport([referralsTable(), scan])).find(({ id }) => id === "clusters")?.below;
  expect(said?.[1]).toMatch(/^7 referrals of 3 children\. Filled/);
});

/** 4 judged and 2 in time say little; 12 referred and 3 plans say how far they came. */
test("from a few plans due, the headline says how far referrals came", () => {
  const table = stepsTable();
  const at = (key: string) => table.columns.findIndex((column) => column.key === key);
  const rows = table.rows.map((row) =>
    row[0] === "plan" ? row.map((value, i) => (i === at("of45") ? 4 : i === at("within45") ? 2 : value)) : row,
  );
  const said = fiveFindings(serviceReport([{ ...table, rows }])).find(({ id }) => id === "referral-to-plan");
  expect(said?.headline).toBe(
    "Of 20 referrals, 6 have a plan so far. A plan was due for 4, and 2 came within 45 days.",
  );
});

test("skills that the reader names come in the order named", () => {
  const named = fiveFindings(smallReport(), ["SP1", "GM1"]).find(({ id }) => id === "reached-by-age");
  const names = named?.picture?.kind === "curve" ? named.picture.lines.map(({ name }) => name) : [];
  expect(names.slice(0, 2)).toEqual(
    ["Says one word with meaning", "Walks some steps alone"].slice(0, names.length / 2),
  );
});

test("a picture draws what its table beside it says: every value is in a cell of its sheet", () => {
  for (const { picture } of findings) {
    if (!picture) continue;
    const { sheet, chart } = pictureSheet(picture);
    const values = picture.kind === "curve" ? [] : picture.bars.map((bar) => bar.values[0]);
    const { top, bottom, left } = chart.series[0]!.y;
    const cells = sheet.rows.slice(top, bottom + 1).map((row) => row[left]);
    expect(picture.kind === "curve" ? cells.length > 1 : cells).toEqual(picture.kind === "curve" ? true : values);
    expect(chart.altText.length).toBeGreaterThan(40);
  }
});

test("where no skill has a window, the first finding says so, and not that nothing was checked", () => {
  const made = serviceReport([{ ...expectedTable(), rows: [["all", "speech", "none", 0, 0, 0, 0, 0, 0, 0]] }]);
  const skills = made.print.skills.map((skill) => ({ ...skill, closesMonths: null }));
  const [without] = fiveFindings({ ...made, print: { ...made.print, skills } });
  expect(without?.below.join(" ")).toMatch(/^No skill has a window/);
  expect(fiveFindings(made)[0]?.below.join(" ")).toMatch(/has an up-to-date check\.$/);
});

test("figures of one group are said to be its own", () => {
  const made = smallReport({ tables: [ageWhenMetTable()] });
  const curves = made.print.curves.map((curve) => ({ ...curve, group: ["River"] }));
  const of = (each: typeof made) => headlineOf("reached-by-age", fiveFindings(each));
  expect(of(made)).toMatch(/^Half of the children met /);
  expect(of({ ...made, print: { ...made.print, curves } })).toMatch(/^Half of the children of River met /);
});
