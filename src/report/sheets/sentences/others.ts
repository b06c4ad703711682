import type { Table } from "../../../tables/table";
import { readTable } from "../read-table";
import { counted, plural, shareOf } from "../../../words/numbers";

export function reachedByAgeSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const asked = read.sum(table.rows, "children");
  const answered = read.sum(table.rows, "met") + read.sum(table.rows, "notMet");
  return [
    `Of ${plural(asked, "question", "questions")} whether a child had met a skill by an age, the records answer ${shareOf(answered, asked).replace(` of ${counted(asked)}`, "")}`,
  ];
}

export function sinceEnrollmentSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50Weeks") !== null).length;
  const what = read.groupColumns.length > 0 ? "skills and groups" : "skills";
  const gained = read.sum(table.rows, "gained");
  const of = read.sum(table.rows, "children");
  return [
    `Of the skills that children did not have at enrollment, ${shareOf(gained, of)} were met since; the time that half of the children took can be estimated for ${known} of ${table.rows.length} ${what}`,
  ];
}

export function agreementSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const pairs = read.sum(table.rows, "pairs");
  const agreed = table.rows.reduce(
    (total, row) => total + Math.round(((read.number(row, "percent") ?? 0) * (read.number(row, "pairs") ?? 0)) / 100),
    0,
  );
  return [
    `Of pairs of observers of one child and skill on one day, ${shareOf(agreed, pairs)} recorded the same result`,
  ];
}

export function skillStatusSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const children = new Set(table.rows.map((row) => read.text(row, "child"))).size;
  return [`Each skill of ${plural(children, "child", "children")}`];
}
