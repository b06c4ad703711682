import type { Table } from "../../../tables/table";
import { readTable } from "../read-table";
import { percentOf, plural } from "../../../words/numbers";

export function reachedByAgeSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const asked = read.sum(table.rows, "children");
  const answered = read.sum(table.rows, "met") + read.sum(table.rows, "notMet");
  return [
    `Of all cases (one child, one skill, one age), the records tell for ${percentOf(answered, asked)} whether the skill was there by that age`,
  ];
}

export function sinceEnrollmentSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50Weeks") !== null).length;
  const what = read.groupColumns.length > 0 ? "skills and groups" : "skills";
  const gained = read.sum(table.rows, "gained");
  const of = read.sum(table.rows, "children");
  return [
    `Of the skills that children did not have at enrolment, ${percentOf(gained, of)} were gained since; the time it took half of the children can be estimated for ${known} of ${table.rows.length} ${what}`,
  ];
}

export function agreementSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const pairs = read.sum(table.rows, "pairs");
  const agreed = table.rows.reduce(
    (total, row) => total + Math.round(((read.number(row, "percent") ?? 0) * (read.number(row, "pairs") ?? 0)) / 100),
    0,
  );
  return [`Of pairs of observers of the same child, skill and day, ${percentOf(agreed, pairs)} wrote the same result`];
}

export function skillStatusSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const children = new Set(table.rows.map((row) => read.text(row, "child"))).size;
  return [`Where each of ${plural(children, "child", "children")} stands with each skill`];
}
