import type { Table } from "../../../tables/table";
import type { Report } from "../../report";
import { readTable, type Row, type TableReader } from "../read-table";

export function ageWhenMetSentences(table: Table, report: Report): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50") !== null).length;
  const what = read.groupColumns.length > 0 ? "skills and groups" : "skills";
  return [
    `The age by which half of the children met the skill can be estimated for ${known} of ${table.rows.length} ${what}`,
    ...WINDOW_KINDS.flatMap((kind) => belowSource(read, table.rows, kind, Number(report.settings.level ?? 0.95))),
  ];
}

interface WindowKind {
  readonly share: number;
  readonly words: string;
}

/** Never put together: the close of one kind means something else than the close of the other. */
const WINDOW_KINDS: readonly WindowKind[] = [
  { share: 0.99, words: "windows whose source expects 99 in 100 children by the close" },
  { share: 0.75, words: "ages by which the source expects 75 or more in 100 children" },
];

/** A share whose upper limit stands below the source's share; by luck alone half of (1 - level) of them would. */
function belowSource(read: TableReader, rows: readonly Row[], kind: WindowKind, level: number): string[] {
  const comparable = rows.filter(
    (row) => read.number(row, "expectedShare") === kind.share && read.number(row, "shareByCloseUpper") !== null,
  );
  if (comparable.length === 0) return [];
  const below = comparable.filter((row) => (read.number(row, "shareByCloseUpper") as number) < kind.share).length;
  const luck = ((comparable.length * (1 - level)) / 2).toFixed(1);
  return [
    `Of ${comparable.length} ${kind.words}, the share here lies below that, limits and all, for ${below}; about ${luck} would by luck alone if the children were like the source's, which a program's children need not be.`,
  ];
}
