import { cellDifferences, differencesInWords } from "../../src/report/again/differences";
import { madeFromReport, parseProvenanceLine, provenanceLine } from "../../src/report/again/provenance-line";
import { rowsLost } from "../../src/report/again/rows-lost";
import { reportJson } from "../../src/report/json";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { parseSettings, type Settings } from "../../src/settings/settings";
import { counted } from "../../src/words/numbers";
import { asRead } from "../sample/as-read";
import { reportOf } from "../support/report-of";

function settingsOf(entries: Readonly<Record<string, unknown>>): Settings {
  const parsed = parseSettings(entries, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join("\n"));
  return parsed.settings;
}

const book = asRead(sampleSheets(makeSample({ children: 12, seed: 3 })));
const ENTRIES = { asOf: "2026-09-30", recheck: 60, by: "Site" };
const report = reportOf(book, settingsOf(ENTRIES), ["met-by-band", "ratings"]);

test("the line carries all that is needed, and nothing that is usual", () => {
  const line = provenanceLine(report);
  const made = parseProvenanceLine(line)!;
  expect(line).not.toContain("\n");
  expect(made).toMatchObject({
    sites: [],
    version: report.tool.version,
    tables: ["met-by-band", "ratings"],
    corrections: null,
  });
  expect(made.settings).toEqual({ asOf: "2026-09-30", from: "2026-07-01", recheck: 60, by: ["Site"] });
  const again = reportOf(book, settingsOf(made.settings), ["met-by-band", "ratings"]);
  expect(reportJson(again)).toBe(reportJson(report));
});

test("a REPORT.json says the same of itself as the printed line", () => {
  const made = madeFromReport(JSON.parse(reportJson(report)))!;
  expect(made.sites.length).toBeGreaterThan(1);
  expect({ ...made, sites: [], settings: settingsOf(made.settings) }).toEqual({
    ...parseProvenanceLine(provenanceLine(report)),
    settings: settingsOf(ENTRIES),
  });
});

test.each(["", "Made with Windowline: {", "Made with Windowline: {}", "Made with Windowline: null", "Made by hand"])(
  "%j says nothing of a report",
  (text) => expect(parseProvenanceLine(text)).toBeNull(),
);

test.each([null, {}, { tool: { name: "Other" }, tables: [] }, { tool: { name: "Windowline" }, tables: [{}] }])(
  "%j is no report",
  (json) => expect(madeFromReport(json)).toBeNull(),
);

describe("rows that the last report had", () => {
  const last = madeFromReport(JSON.parse(reportJson(report)))!;
  const now = report.provenance;
  const [first] = now.sites;

  test("records that grew, or stayed, say nothing", () => {
    const more = now.records.map((each) => ({ ...each, rows: each.rows + 5 }));
    expect(rowsLost(last, now)).toEqual([]);
    expect(rowsLost(last, { ...now, records: more })).toEqual([]);
  });

  test("a table with fewer rows, and one that is gone", () => {
    const rows = last.records.find(({ table }) => table === "Observations")!.rows;
    const fewer = now.records.map((each) => (each.table === "Observations" ? { ...each, rows: rows - 7 } : each));
    expect(rowsLost(last, { ...now, records: fewer })).toEqual([
      `Observations has ${counted(rows - 7)} rows; the last report had ${counted(rows)}. Check for a filter left on, or a sheet or file that was forgotten.`,
    ]);
    const without = now.records.filter(({ table }) => table !== "Signs");
    expect(rowsLost(last, { ...now, records: without })[0]).toMatch(/^Signs is gone; the last report had/);
  });

  test("a site that lost observations though the whole grew, and one that is gone", () => {
    const half = now.sites.map((each) => (each === first ? { ...each, observations: each.observations - 1 } : each));
    const records = now.records.map((each) => ({ ...each, rows: each.rows + 50 }));
    expect(rowsLost(last, { ...now, records, sites: half })[0]).toMatch(
      new RegExp(
        `^Site ${first!.site} has ${first!.observations - 1} observations; the last report had ${first!.observations}`,
      ),
    );
    expect(rowsLost(last, { ...now, sites: now.sites.slice(1) })[0]).toMatch(/^Site .* is gone; the last report had/);
  });
});

describe("what differs, in words", () => {
  const made = parseProvenanceLine(provenanceLine(report))!;
  const { provenance } = report;
  const withRows = (table: string, rows: number) => ({
    ...provenance,
    fingerprint: "other",
    records: provenance.records.map((each) => (each.table === table ? { ...each, rows, fingerprint: "other" } : each)),
  });
  const rowsOf = (table: string) => provenance.records.find((each) => each.table === table)!.rows;

  test("nothing, where nothing does", () => expect(differencesInWords(made, provenance)).toEqual([]));

  test("records: the table, and how many rows more or fewer", () => {
    expect(differencesInWords(made, withRows("Children", rowsOf("Children") + 2))).toEqual([
      "The records are not the same.",
      `Children: ${rowsOf("Children") + 2} rows, 2 rows more than the ${rowsOf("Children")} before.`,
    ]);
    expect(differencesInWords(made, withRows("Ratings", rowsOf("Ratings"))).at(-1)).toMatch(
      /and cells that changed\.$/,
    );
    const without = {
      ...provenance,
      fingerprint: "x",
      records: provenance.records.filter(({ table }) => table !== "Signs"),
    };
    expect(differencesInWords(made, without).at(-1)).toMatch(/^Signs is no longer there; it had \d+ rows?\.$/);
  });

  test("corrections and version", () => {
    expect(differencesInWords({ ...made, corrections: "a" }, provenance)).toEqual([
      expect.stringMatching(/^The report was made with corrections, and none were given now/),
    ]);
    expect(differencesInWords({ ...made, version: "0.0.9" }, provenance)).toEqual([
      `The report was made with version 0.0.9, and this is version ${provenance.version}.`,
    ]);
  });
});

test("cells that differ are named with both values; those of single children are only counted", () => {
  const columns = [
    { key: "skill", unit: "text" },
    { key: "met", unit: "children" },
  ];
  const table = (id: string, met: number) => ({
    id,
    columns,
    rows: [
      ["sits", met],
      ["walks", 4],
    ],
  });
  expect(cellDifferences([table("met-by-band", 3)], [table("met-by-band", 5)])).toEqual({
    count: 1,
    first: [{ place: "met-by-band / sits / met", earlier: "3", now: "5" }],
  });
  expect(cellDifferences([table("caseload", 3)], [table("caseload", 5)])).toEqual({ count: 1, first: [] });
});
