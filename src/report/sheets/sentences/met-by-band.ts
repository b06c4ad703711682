import type { Table } from "../../../tables/table";
import { capital, counted, plural, shareOf } from "../../../words/numbers";
import type { Report } from "../../report";
import { ALL_SKILLS, type Row, readTable, type TableReader } from "../read-table";
import { settingDay } from "../setting-day";

export function metByBandSentences(table: Table, { print, settings }: Report): readonly string[] {
  const read = readTable(table);
  const all = areaRows(table, read);
  const { assessed, met, boxes, lost } = totals(read, all);
  if (boxes === 0) return [];
  const day = settingDay(settings, "asOf") ?? "that day";
  return [
    checksMet(assessed, met),
    `${plural(print.followed, "child", "children")} in the program on ${day}. Another ${plural(boxes - assessed, "skill was", "skills were")} not checked or need a recheck.`,
    ...leastKnown(read, all),
    ...lostSentence(lost),
  ];
}

export function metByBandLeftSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const { assessed, met } = totals(read, areaRows(table, read));
  const left = plural(childrenOf(table, read), "child", "children");
  return [`${left} left the program in the period. ${checksMet(assessed, met)} on their last day`];
}

/** `Of 7,615 up-to-date skill checks, 6,398 (84%) were met`. */
export function checksMet(checked: number, met: number): string {
  const share = shareOf(met, checked);
  const percent = share.includes("(") ? ` ${share.slice(share.indexOf("("))}` : "";
  return `Of ${plural(checked, "up-to-date skill check", "up-to-date skill checks")}, ${counted(met)}${percent} ${met === 1 ? "was" : "were"} met`;
}

function totals(read: TableReader, rows: readonly Row[]) {
  return {
    boxes: read.sum(rows, "children"),
    assessed: read.sum(rows, "assessed"),
    met: read.sum(rows, "met"),
    lost: read.sum(rows, "lost"),
  };
}

/** The area in which most skills have no up-to-date check. */
function leastKnown(read: TableReader, all: readonly Row[]): string[] {
  const areas = [...new Set(all.map((row) => read.text(row, "area")))].map((area) => {
    const rows = all.filter((row) => read.text(row, "area") === area);
    const of = read.sum(rows, "children");
    return { area, of, unknown: of - read.sum(rows, "assessed") };
  });
  const [first] = areas.sort((a, b) => b.unknown * a.of - a.unknown * b.of);
  if (!first || areas.length < 2 || first.unknown === 0) return [];
  return [
    `Least is known in ${first.area}: ${shareOf(first.unknown, first.of)} skills were not checked or need a recheck.`,
  ];
}

function lostSentence(lost: number): string[] {
  if (lost === 0) return [];
  return [
    `${capital(plural(lost, "skill is lost or possibly lost", "skills are lost or possibly lost"))}. Talk with the child's clinician without waiting.`,
  ];
}

function areaRows(table: Table, read: TableReader): Row[] {
  return table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS);
}

/** Every child is once in every skill: the rows of one skill add up to the children. */
function childrenOf(table: Table, read: TableReader): number {
  const first = table.rows[0];
  if (!first) return 0;
  const skill = read.text(first, "skill");
  return read.sum(
    table.rows.filter((row) => read.text(row, "skill") === skill),
    "children",
  );
}
