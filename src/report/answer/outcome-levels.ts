import { counted, LEAST_BASE_OF_A_PERCENT, listed } from "../../words/numbers";
import type { Table } from "../../tables/table";
import type { Report } from "../report";
import { type Row, readTable, type TableReader } from "../sheets/read-table";
import { notThere, type ReportFinding, tableOf, withoutTable } from "./finding";
import type { BarPicture } from "./picture";

const ID = "outcome-levels";

/** Entry and exit ratings of the children who left. */
export function outcomeLevels(report: Report): ReportFinding {
  const table = tableOf(report, "ratings");
  return table ? ratingsFinding(table) : withoutTable(report, ID, "ratings", "Outcome levels");
}

export function ratingsFinding(table: Table): ReportFinding {
  const read = readTable(table);
  const rows = (statement: number) => table.rows.filter((row) => read.number(row, "statement") === statement);
  const second = rows(2).filter((row) => (read.number(row, "of") ?? 0) > 0);
  if (second.length === 0) return notThere(ID, "Outcome levels", NOBODY);
  return {
    id: ID,
    headline: headlineOf(read, second),
    below: [entered(read, rows(1)), isFew(read, second) ? FEW : ""],
    picture: picture(read, rows(1), second),
  };
}

const NOBODY = "No child who left after six months of service or more has both an entry and an exit rating.";
const FEW = "One child more or less moves such small numbers a great deal.";

function isFew(read: TableReader, rows: readonly Row[]): boolean {
  return rows.some((row) => (read.number(row, "of") ?? 0) < LEAST_BASE_OF_A_PERCENT);
}

/** One sentence for all outcomes where as many were rated in each; the bars name each with its count. */
function headlineOf(read: TableReader, rows: readonly Row[]): string {
  const counts = rows.map((row) => read.number(row, "count") ?? 0);
  const of = [...new Set(rows.map((row) => read.number(row, "of") ?? 0))];
  if (of.length > 1) return `At exit, ${listed(rows.map((row, at) => levelOf(read, row, at === 0)))}.`;
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  const range = least === most ? counted(least) : `${counted(least)} to ${counted(most)}`;
  const outcomes = least === most ? "" : ", depending on the outcome";
  return `At exit, ${range} of ${counted(of[0] ?? 0)} children were at the level of children their age${outcomes}.`;
}

function levelOf(read: TableReader, row: Row, isFirst: boolean): string {
  const where = isFirst ? "children were at the level of children their age in" : "in";
  return `${countOf(read, row)} ${where} ${outcomeOf(read, row)}`;
}

function countOf(read: TableReader, row: Row): string {
  return `${counted(read.number(row, "count") ?? 0)} of ${counted(read.number(row, "of") ?? 0)}`;
}

/** `“being with others”`. */
function outcomeOf(read: TableReader, row: Row): string {
  const text = read.text(row, "outcome");
  return `“${text.slice(0, 1).toLowerCase()}${text.slice(1)}”`;
}

function entered(read: TableReader, rows: readonly Row[]): string {
  const said = rows
    .filter((row) => (read.number(row, "of") ?? 0) > 0)
    .map((row) => `${countOf(read, row)} in ${outcomeOf(read, row)}`);
  return said.length === 0 ? "" : `Of those who entered below that level, these grew faster by exit: ${listed(said)}.`;
}

export const OUTCOME_PARTS = [
  { key: "a", name: "a: no new skills", look: "lined" },
  { key: "b", name: "b: some, no closer to peers", look: "hollow" },
  { key: "aOrB", name: "a or b", look: "crossed" },
  { key: "c", name: "c: closer to peers", look: "pale" },
  { key: "d", name: "d: reached peers", look: "striped" },
  { key: "e", name: "e: level with peers throughout", look: "solid" },
] as const;

function picture(read: TableReader, rows: readonly Row[], atLevel: readonly Row[]): BarPicture {
  const parts = OUTCOME_PARTS.filter(({ key }) => read.has(key) && read.sum(rows, key) > 0);
  const bars = rows.map((row) => {
    const values = parts.map(({ key }) => read.number(row, key) ?? 0);
    const second = atLevel.find((each) => read.text(each, "outcome") === read.text(row, "outcome"));
    return { label: `${read.text(row, "outcome")}${second ? `: ${countOf(read, second)}` : ""}`, values };
  });
  return {
    kind: "bar share stacked",
    title: "Progress from entry to exit",
    altText: `Bars, one per outcome, of children by progress category. ${rows.map((row) => `${read.text(row, "outcome")}: ${parts.map(({ key }) => `${key === "aOrB" ? "a or b" : key} ${read.number(row, key) ?? 0}`).join(", ")}`).join("; ")}.`,
    parts: parts.map(({ name, look }) => ({ name, look })),
    bars,
    x: { title: "", reversed: true },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare", hidden: true },
    legend: "bottom",
  };
}
