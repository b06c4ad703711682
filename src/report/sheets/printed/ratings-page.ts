import { CAUTION } from "../../../words/cautions";
import { shareOf } from "../../../words/numbers";
import { tableOf } from "../../answer/finding";
import { OUTCOME_PARTS, outcomeLevels } from "../../answer/outcome-levels";
import type { Report } from "../../report";
import { periodInWords } from "../page";
import { type Row, readTable, type TableReader } from "../read-table";
import type { TitledSheet } from "./area-page";
import { type PageColumn, pageTable } from "./page-table";
import { CAUTION_POINTS, PrintedPage } from "./printed-page";
import { LANDSCAPE } from "./widths";

/** Outcome levels at entry and exit: how children are shared out, and the two summary statements. */
export function ratingsPage(report: Report): TitledSheet[] {
  const table = tableOf(report, "ratings");
  if (!table) return [];
  const read = readTable(table);
  const { headline, below, picture } = outcomeLevels(report);
  const page = new PrintedPage("Outcome levels", LANDSCAPE, true);
  page.text(headline, "title");
  page.text(`${below.filter((line) => line !== "").join(" ")} ${periodInWords(report)}.`, "subtitle");
  page.space(4);
  const first = table.rows.filter((row) => read.number(row, "statement") === 1);
  if (picture) page.chartRow([picture], 90 + 30 * first.length);
  page.space(4);
  pageTable(page, columns(read), table.rows);
  page.space(4);
  page.notes(table.notes, CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: "Outcome levels: entry, exit, and progress between them" }];
}

const STATEMENTS: Readonly<Record<number, string>> = {
  1: "Entered below the level of children their age, and grew faster by exit",
  2: "At the level of children their age at exit",
};

function columns(read: TableReader): PageColumn<Row>[] {
  const counts = OUTCOME_PARTS.filter(({ key }) => read.has(key)).map(({ key }): PageColumn<Row> => ({
    heading: key === "aOrB" ? "a or b" : key,
    breadth: key === "aOrB" ? 1 : 1,
    align: "middle",
    value: (row) => (read.number(row, "statement") === 1 ? String(read.number(row, key) ?? 0) : ""),
  }));
  return [
    {
      heading: "Outcome",
      breadth: 2,
      align: "left",
      value: (row) => (read.number(row, "statement") === 1 ? read.text(row, "outcome") : ""),
    },
    ...counts,
    {
      heading: "Summary statement",
      breadth: 8 - counts.length,
      align: "left",
      value: (row) => STATEMENTS[read.number(row, "statement") ?? 0] ?? "",
    },
    {
      heading: "Children",
      breadth: 2,
      align: "middle",
      value: (row) => shareOf(read.number(row, "count") ?? 0, read.number(row, "of") ?? 0),
    },
  ];
}
