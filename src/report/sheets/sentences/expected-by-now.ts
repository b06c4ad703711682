import type { Table } from "../../../tables/table";
import { type Row, readTable, type TableReader } from "../read-table";
import { counted, percentOf } from "../../../words/numbers";

/** One sentence for each kind of window, the one with most checks first: kinds are never added up. */
export function expectedByNowSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const all = table.rows.filter((row) => read.text(row, "skill") === "all");
  const kinds = [...new Set(all.map((row) => read.text(row, "kind")))].map((kind) => {
    const rows = all.filter((row) => read.text(row, "kind") === kind);
    return { kind, rows, checked: read.sum(rows, "checked") };
  });
  const said = kinds
    .filter(({ checked }) => checked > 0)
    .sort((a, b) => b.checked - a.checked)
    .map(({ kind, rows }) => kindSentence(read, kind, rows));
  return said.length > 0 ? said : ["No skill with a closed window has an up-to-date check"];
}

function kindSentence(read: TableReader, kind: string, rows: readonly Row[]): string {
  const unknown = read.sum(rows, "needsRecheck") + read.sum(rows, "notChecked");
  const rest = unknown === 0 ? "" : `; another ${counted(unknown)} were not checked or need a recheck`;
  return `Of skill checks ${WHICH[kind] ?? `that ${kind} of children in the source study have met by now`}, ${percentOf(read.sum(rows, "met"), read.sum(rows, "checked"))} were met${rest}`;
}

/** How a kind of window is said. */
const WHICH: Readonly<Record<string, string>> = {
  "0.99": "past a window by which nearly all children in its source study have met the skill",
  "0.75": "past an age by which three in four children in its source have met the skill",
  none: "past an age of common practice, without a source",
};
