import { reportSheets } from "../../../src/report/sheets/report-sheets";
import { parseProvenanceLine, provenanceLine } from "../../../src/report/again/provenance-line";
import { stepOf } from "../../../src/report/sheets/printed/area-cells";
import { shortBand } from "../../../src/report/sheets/printed/area-page";
import { roomOnPaper, columnPoints } from "../../../src/workbook/paper";
import { CELL_LOOKS } from "../../../src/workbook/looks";
import type { CellValue, SheetOut } from "../../../src/workbook/sheets";
import { metByBandTable, smallReport } from "./fixture";
import { ratingsTable, referralsTable, scanTable, serviceReport, stepsTable, trendTable } from "./service-tables";

const report = smallReport();
const sheets = reportSheets(report);
const services = [referralsTable(), scanTable(), stepsTable(), ratingsTable(), trendTable()];
const whole = serviceReport([...report.tables, ...services]);
const pages = reportSheets(whole);

test("the answer comes first, then how to read it, a page per area, services, the trend, and what it is made of", () => {
  expect(pages.map(({ name }) => name)).toEqual([
    ...["In brief", "How to read", "Gross motor", "Speech", "Referrals", "Where referrals clustered"],
    ...["From referral to plan", "Outcome levels", "Trend", "About this report"],
  ]);
});

test("each sheet is one page, as wide and as high as Letter and A4 both hold", () => {
  for (const { name, print, columns, rowHeights, rows } of pages) {
    expect([name, print?.fit]).toEqual([name, "one page"]);
    const room = roomOnPaper(print?.landscape ?? false);
    const area = print?.area ?? { right: 0, bottom: 0 };
    const width = columns.slice(0, area.right + 1).reduce((sum, each) => sum + columnPoints(each.width), 0);
    const height = rows.slice(0, area.bottom + 1).reduce((sum, _, row) => sum + (rowHeights?.get(row) ?? 15), 0);
    expect(width).toBeLessThanOrEqual(room.width);
    expect(height).toBeLessThanOrEqual(room.height);
  }
});

test("the contents name every page with its number", () => {
  const lines = valuesOf(pages[1] as SheetOut).flatMap((row) => {
    const page = row.find((value) => typeof value === "string" && /^page \d+$/.test(value));
    return page ? [Number(String(page).slice(5))] : [];
  });
  expect(lines).toEqual(pages.map((_, at) => at + 1));
});

/** By hand from the fixture: GM1 8 of 10, SP1 6 of 9, SP2 9 of 12. */
test("a cell is met of those checked, beside the window and the ages", () => {
  const row = valuesOf(named("Gross motor")).find(([label]) => label === "Walks some steps alone");
  expect(row?.slice(0, 8)).toEqual([
    "Walks some steps alone",
    "8.2 to 17.6",
    "12.5",
    "14.5",
    "16.0",
    "8 of 10",
    "10 of 12",
    "2",
  ]);
  const speech = valuesOf(named("Speech"));
  expect(speech[0]?.[0]).toBe("Speech: of 21 up-to-date skill checks, 15 (71%) were met");
  expect(speech.find(([label]) => label === "Claps along")?.slice(1, 6)).toEqual([
    "6.0 to 9.0 *",
    "–",
    "–",
    "–",
    "9 of 12",
  ]);
});

test("groups of a report are added up on an area's page", () => {
  const table = metByBandTable();
  const columns = [{ key: "Site", label: "Site", unit: "text" as const }, ...table.columns];
  const rows = ["Hill", "River"].flatMap((site) => table.rows.map((row) => [site, ...row]));
  const page = reportSheets(smallReport({ tables: [{ ...table, columns, rows }] }))[2] as SheetOut;
  expect(valuesOf(page).find(([label]) => label === "Walks some steps alone")).toContain("16 of 20");
});

test("more skills than a page holds go on, and say so", () => {
  const skills = Array.from({ length: 45 }, (_, at) => ({
    ...report.print.skills[0]!,
    id: `S${at}`,
    label: `Skill ${at}`,
  }));
  const [first] = metByBandTable().rows;
  const rows = skills.map(({ id }) => [id, ...(first ?? []).slice(1)]);
  const out = reportSheets(
    smallReport({ tables: [{ ...metByBandTable(), rows }], print: { ...report.print, skills } }),
  );
  const areas = out.filter(({ name }) => name.startsWith("Gross motor"));
  expect(areas.map((sheet) => String(valuesOf(sheet)[0]?.[0]).endsWith(", continued"))).toEqual([false, true, true]);
  const labels = areas.flatMap((sheet) => valuesOf(sheet).map(([label]) => String(label ?? "")));
  for (const { label } of skills) expect(labels).toContain(label);
});

test("shades begin at a half, three quarters and nine in ten, and differ in grey by a clear step", () => {
  expect([0, 0.49, 0.5, 0.74, 0.75, 0.89, 0.9, 1].map(stepOf)).toEqual([0, 0, 1, 1, 2, 2, 3, 3]);
  const greys = ([0, 1, 2, 3] as const).map((step) => greyOf(CELL_LOOKS[`step${step}`].fill ?? "#FFFFFF"));
  greys.slice(1).forEach((grey, at) => expect((greys[at] as number) - grey).toBeGreaterThan(0.06));
  const darkest = contrast(greyOf(CELL_LOOKS.step3.color), greys[3] as number);
  expect(darkest).toBeGreaterThan(4.5);
});

test("age groups are named by whole months", () => {
  expect(["0 to <3 months", "12 to <18 months", "36 months and over", "before 0 months"].map(shortBand)).toEqual([
    "0 to 2 months",
    "12 to 17 months",
    "36 and over",
    "before due date",
  ]);
});

test("no style of the pages is under 9 points, so that shrinking to A4 leaves 8.5", () => {
  for (const { points } of Object.values(CELL_LOOKS)) expect(points).toBeGreaterThanOrEqual(9);
});

test("the box names losses, rows left out and what is provisional", () => {
  const text = valuesOf(pages[0] as SheetOut)
    .flat()
    .join("\n");
  expect(text).toContain("1 skill is lost or possibly lost. The caseload list names each child.");
  expect(text).toContain("12 rows were left out of the figures: exact copy (8), after the as-of date (4).");
  expect(text).toContain("July to September 2026 is provisional");
});

test("the last page's line gives back all that is needed to make the report again", () => {
  const line = valuesOf(pages.at(-1) as SheetOut)
    .flat()
    .find((value) => parseProvenanceLine(String(value ?? "")) !== null);
  expect(line).toBe(provenanceLine(whole));
  expect(parseProvenanceLine(String(line))?.settings).toMatchObject({ asOf: "2026-09-30", from: "2026-07-01" });
});

test("a report without children still says so in whole sentences", () => {
  const empty = { ...metByBandTable(), rows: [] };
  const out = reportSheets(
    smallReport({ tables: [empty], findings: [], print: { ...report.print, followed: 0, curves: [] } }),
  );
  expect(out.map(({ name }) => name)).toEqual(["In brief", "How to read", "About this report"]);
  expect(
    valuesOf(out[0] as SheetOut)
      .flat()
      .join(" "),
  ).toContain("not in this report");
});

test("charts read the cells that their series mean, inside their own sheet and outside of what is printed", () => {
  for (const sheet of pages) {
    for (const chart of sheet.charts ?? []) {
      expect(chart.altText.length).toBeGreaterThan(60);
      for (const { x, y } of chart.series) {
        expect(y.bottom - y.top).toBe(x.bottom - x.top);
        expect(y.left).toBeGreaterThan(sheet.print?.area?.right ?? Infinity);
        const cells = valuesOf(sheet)
          .slice(y.top, y.bottom + 1)
          .map((row) => row[y.left]);
        expect(cells.every((value) => typeof value === "number" || value === null)).toBe(true);
      }
    }
  }
});

test("the words of every chart are in cells of its sheet", () => {
  for (const sheet of pages)
    for (const { altText } of sheet.charts ?? []) expect(valuesOf(sheet).flat()).toContain(altText);
});

function named(name: string): SheetOut {
  const sheet = sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
}

function valuesOf(sheet: SheetOut): CellValue[][] {
  return sheet.rows.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell)));
}

/** Relative luminance: WCAG 2.2, "relative luminance" and 1.4.3. */
function greyOf(rgb: string): number {
  const parts = [1, 3, 5].map((at) => Number.parseInt(rgb.slice(at, at + 2), 16) / 255);
  const [r, g, b] = parts.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r as number) + 0.7152 * (g as number) + 0.0722 * (b as number);
}

function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
