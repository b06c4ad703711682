/** A run is a value over records: a report, or the reason why there is none. */
import { sourceOf } from "../../src/records/fingerprint";
import { readRecords } from "../../src/records/read-records";
import { runReport } from "../../src/report/run";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { settingsOf } from "../records/book";
import { asRead } from "../sample/as-read";

const workbook = asRead(sampleSheets(makeSample({ children: 12, seed: 5 })));

function run(entries: Record<string, unknown>, tables: Parameters<typeof runReport>[1]["tables"]) {
  const settings = settingsOf(entries);
  const records = readRecords(workbook, settings);
  return runReport(records, { settings, tables, source: sourceOf(workbook, records, []) });
}

test("a column that Children does not have is a reason, and names those there are", () => {
  const found = run({ asOf: "2026-09-30", by: "Sight" }, ["met-by-band"]);
  expect(found).toEqual({
    reason: expect.stringMatching(/^Children has no column "Sight" to group by\. It has: .*Site/) as string,
  });
});

test("a day before the first record is a reason", () => {
  expect(run({ asOf: "1999-12-31" }, null)).toEqual({
    reason: "The as-of date comes before the first record: no child was in the program by then. Choose a later date.",
  });
});

test("tables come in the order of the catalogue, whatever the order in which they are asked for", () => {
  const found = run({ asOf: "2026-09-30" }, ["trend", "ratings", "met-by-band"]);
  if (!("report" in found)) throw new Error(found.reason);
  expect(found.report.tables.map(({ id }) => id)).toEqual(["met-by-band", "ratings", "trend"]);
});

test("a table that cannot be made is left out, and the report says so", () => {
  const settings = settingsOf({ asOf: "2026-09-30" });
  const records = { ...readRecords(workbook, settings), referrals: null };
  const found = runReport(records, {
    settings,
    tables: ["referrals", "trend"],
    source: { fingerprint: "", records: [], sites: [], corrections: null },
  });
  if (!("report" in found)) throw new Error(found.reason);
  expect(found.report.tables.map(({ id }) => id)).toEqual(["trend"]);
  expect(found.report.print.counted).toContain("The workbook has no table of referrals: referrals was not made.");
});

test("every step is told before it is done", () => {
  const settings = settingsOf({ asOf: "2026-09-30" });
  const steps: string[] = [];
  runReport(readRecords(workbook, settings), {
    settings,
    tables: ["trend"],
    source: { fingerprint: "", records: [], sites: [], corrections: null },
    onStep: (step) => steps.push(step),
  });
  expect(steps.at(-1)).toBe("Making trend");
});
