/**
 * No percent of fewer than twenty in a headline, a chart or a sentence, wherever a small program meets one (METHOD.md, section 9):
 * every text of its report, data workbook, pages, first page and release is read for percents and the counts beside them.
 */
import { buildCohort } from "../../src/cohort/cohort";
import { readRecords } from "../../src/records/read-records";
import { fiveFindings } from "../../src/report/answer/five-findings";
import { needsAPerson } from "../../src/report/answer/needs-a-person";
import { pageOf } from "../../src/report/pages/make-page";
import { barsOf } from "../../src/report/release/picture-bars";
import { BAR_KINDS } from "../../src/report/release/bar-kinds";
import { picturesOf } from "../../src/report/release/pictures";
import { reportSheets } from "../../src/report/sheets/report-sheets";
import { sentencesOf } from "../../src/report/sheets/sentences/sentences";
import type { ReleasedTable } from "../../src/release/release-table";
import { sentencesOf as releasedSentences } from "../../src/release/words/sentences";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { concernsOfFollowed } from "../../src/tables/caseload/followed";
import { tableContext } from "../../src/tables/context";
import type { SheetOut } from "../../src/workbook/sheets";
import { settingsOf } from "../records/book";
import { CONTEXT } from "../release/support/prepared";
import { asRead } from "../sample/as-read";
import { reportOf } from "../support/report-of";
import { percentsOfFew } from "./percents";

test("a percent of few, or without its counts, is found", () => {
  expect(percentsOfFew("3 of 3 (100%) were met")).toHaveLength(1);
  expect(percentsOfFew("100.0% (19 of 19)")).toHaveLength(1);
  expect(percentsOfFew("about 40% were met")).toHaveLength(1);
  expect(percentsOfFew("20 of 40 children had met it (50.0%; 95% confidence interval 35.2% to 64.8%)")).toEqual([]);
  expect(percentsOfFew("62.4% (53 of 85)")).toEqual([]);
});

/** A picture of the one skill of the rows below. */
const PICTURED = { ...CONTEXT, pictured: ["walk-alone"] };

/** Fourteen invented children at three sites: hardly a count reaches twenty at a site. */
const workbook = asRead(sampleSheets(makeSample({ children: 14, seed: 3 })));
const settings = settingsOf({ asOf: "2026-09-30", from: "2025-01-01", by: ["Site"] });
const report = reportOf(workbook, settings, null);

test("the first page, and what the command line says of it", () => {
  const said = fiveFindings(report).flatMap(({ headline, below, picture }) => [
    headline,
    ...below,
    picture?.title ?? "",
    picture?.altText ?? "",
    ...(picture && "bars" in picture ? picture.bars.map(({ label }) => label) : []),
  ]);
  expect([...said, ...needsAPerson(report)].flatMap(percentsOfFew)).toEqual([]);
});

test("what each table says, and its notes", () => {
  const said = report.tables.flatMap((table) => [...sentencesOf(table, report), ...table.notes]);
  expect(said.length).toBeGreaterThan(40);
  expect(said.flatMap(percentsOfFew)).toEqual([]);
});

test("every text of the printed report and its charts", () => {
  const texts = reportSheets(report).flatMap(textsOf);
  expect(texts.length).toBeGreaterThan(500);
  expect(texts.flatMap(percentsOfFew)).toEqual([]);
});

test("the caseload of each therapist and the page of each child", () => {
  const records = readRecords(workbook, settings);
  const context = tableContext(buildCohort(records, settings), settings, records);
  const all = concernsOfFollowed(context);
  const therapists = [...new Set(all.map(({ therapist }) => therapist))];
  const pages = [
    ...therapists.map((code) => pageOf(context, { kind: "therapist", code })),
    ...all.map(({ child }) => pageOf(context, { kind: "child", id: context.cohort.ids[child] as string })),
  ];
  expect(pages.length).toBeGreaterThan(6);
  expect(pages.flatMap(textsOf).flatMap(percentsOfFew)).toEqual([]);
});

/** Sheets as texts: cells, and what a chart says. */
function textsOf({ rows, charts = [] }: SheetOut): string[] {
  const cells = rows.flat().map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell));
  return [
    ...cells.filter((cell) => typeof cell === "string"),
    ...charts.flatMap(({ title, altText, series }) => [
      title,
      altText,
      ...series.flatMap(({ name, guide }) => (guide ? [] : [name])),
    ]),
  ];
}

/** A row of each table that can leave, from 19 and from 20: 12 of 19 is 63.2%, 12 of 20 is 60.0%. */
describe.each(Object.keys(BAR_KINDS) as ReleasedTable["id"][])("a release of %s", (id) => {
  const released = (of: number): ReleasedTable => {
    const share = 12 / of;
    const values = {
      ...{ skill: "walk-alone", area: "gross motor", band: "12 to <18 months", quarter: "2026-Q3", step: "evaluated" },
      ...{ outcome: "Being with others", statement: "2", age: "12", dimension: "site", value: "North" },
      ...{ children: of, assessed: of, of, met: 12, count: 12, notKnown: 0, referrals: 12 },
      ...{ shareMet: share, share, lowest: share, percent: 100 * share, lower: share - 0.2, upper: share + 0.1 },
    };
    const text = ["skill", "area", "band", "quarter", "step", "outcome", "statement", "age", "dimension", "value"];
    return {
      id,
      title: "Invented",
      population: "Invented children",
      columns: Object.keys(values).map((key) => ({ key, label: key, unit: text.includes(key) ? "text" : "count" })),
      rows: [Object.values(values)],
      notes: [],
    };
  };
  const textsFrom = (of: number) => [
    ...releasedSentences(released(of), CONTEXT).map(({ text }) => text),
    ...barsOf(released(of), BAR_KINDS[id], PICTURED).map(({ words }) => words),
    ...picturesOf(released(of), PICTURED).flatMap(({ title, altText }) => [title, altText]),
  ];

  test("12 of 19 has no percent, 12 of 20 may have one", () => {
    expect(textsFrom(19).length).toBeGreaterThan(1);
    expect(textsFrom(19).join(" ")).not.toMatch(/63\.2%|63%/);
    expect([...textsFrom(19), ...textsFrom(20)].flatMap(percentsOfFew)).toEqual([]);
  });
});
