import type { Table } from "../../../tables/table";
import type { Report } from "../../report";
import { ALL_SKILLS, type Row, readTable, type TableReader } from "../read-table";
import { capital, counted, percentOf, plural } from "../../../words/numbers";

export function metByBandSentences(table: Table, report: Report): readonly string[] {
  const read = readTable(table);
  const all = areaRows(table, read);
  const { assessed, met, boxes, lost } = totals(read, all);
  if (boxes === 0) return [];
  const followed = plural(report.print.followed, "child is", "children are");
  return [
    `${followed} followed; of the child-skills with a current look, ${percentOf(met, assessed)} are met`,
    `Of all child-skills, ${percentOf(assessed, boxes)} have a current look.`,
    ...leastKnown(read, all),
    ...lostSentence(lost, boxes),
  ];
}

export function metByBandLeftSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const { assessed, met } = totals(read, areaRows(table, read));
  const left = plural(childrenOf(table, read), "child", "children");
  return [
    `${left} left in the period; of the child-skills with a look still current on their last day, ${percentOf(met, assessed)} were met`,
  ];
}

function totals(read: TableReader, rows: readonly Row[]) {
  return {
    boxes: read.sum(rows, "children"),
    assessed: read.sum(rows, "assessed"),
    met: read.sum(rows, "met"),
    lost: read.sum(rows, "lost"),
  };
}

/** The area in which most child-skills have no current look. */
function leastKnown(read: TableReader, all: readonly Row[]): string[] {
  const areas = [...new Set(all.map((row) => read.text(row, "area")))].map((area) => {
    const rows = all.filter((row) => read.text(row, "area") === area);
    const of = read.sum(rows, "children");
    return { area, of, unknown: of - read.sum(rows, "assessed") };
  });
  const [first] = areas.sort((a, b) => b.unknown * a.of - a.unknown * b.of);
  if (!first || areas.length < 2 || first.unknown === 0) return [];
  return [
    `${capital(first.area)} is the area with least known: of its child-skills, ${percentOf(first.unknown, first.of)} are out of date or not assessed.`,
  ];
}

function lostSentence(lost: number, of: number): string[] {
  if (lost === 0) return [];
  const said = `${plural(lost, "child-skill stands", "child-skills stand")} as lost or lost to confirm, of ${counted(of)}.`;
  return [`${said} A skill that was there and is gone is a reason to talk with the child's clinician without waiting.`];
}

function areaRows(table: Table, read: TableReader): Row[] {
  return table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS);
}

/** Every child stands once in every skill: the rows of one skill add up to the children. */
function childrenOf(table: Table, read: TableReader): number {
  const first = table.rows[0];
  if (!first) return 0;
  const skill = read.text(first, "skill");
  return read.sum(
    table.rows.filter((row) => read.text(row, "skill") === skill),
    "children",
  );
}
