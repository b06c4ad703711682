import { reportJson } from "../../src/report/json";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { parseSettings } from "../../src/settings/settings";
import { randomFrom } from "../../src/statistics/random";
import type { SheetOut } from "../../src/workbook/sheets";
import { asRead } from "../sample/as-read";
import { reportOf } from "../support/report-of";

const sheets = sampleSheets(makeSample({ children: 120, seed: 7 }));

/** Fisher & Yates, as in Knuth (1998), The Art of Computer Programming 2, 3rd ed., section 3.4.2, algorithm P. */
function shuffled(sheet: SheetOut, seed: number): SheetOut {
  const random = randomFrom(seed);
  const [header = [], ...rows] = sheet.rows;
  for (let last = rows.length - 1; last > 0; last -= 1) {
    const other = random.nextInt(last + 1);
    [rows[last], rows[other]] = [rows[other]!, rows[last]!];
  }
  return { ...sheet, rows: [header, ...rows] };
}

function reportOn(of: readonly SheetOut[]) {
  const parsed = parseSettings({ asOf: "2026-09-30" }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return reportOf(asRead(of), parsed.settings, null);
}

/** The sheets of the sample with their rows in another order; only the cells that findings point at can differ. */
describe("rows in another order", () => {
  const here = reportOn(sheets);
  // the Skills table says in which order skills are listed
  const there = reportOn(sheets.map((sheet, at) => (sheet.name === "Skills" ? sheet : shuffled(sheet, 100 + at))));
  const withoutFindings = (report: typeof here) => reportJson({ ...report, findings: [] }).split("\n");
  const withoutCells = (report: typeof here) =>
    report.findings.map((finding) => JSON.stringify({ ...finding, cell: null })).sort();

  test("REPORT.json is the same to the byte", () => {
    expect(withoutFindings(there)).toEqual(withoutFindings(here));
  });

  test("the findings are the same, at the cells where their rows now stand", () => {
    expect(withoutCells(there)).toEqual(withoutCells(here));
    expect(there.findings).not.toEqual(here.findings);
  });
});
