import type { Table } from "../../../tables/table";
import type { Report } from "../../report";
import { plural } from "../words";
import { readTable, type Row, type TableReader } from "../read-table";

export function ageWhenMetSentences(table: Table, report: Report): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50") !== null).length;
  const grouped = read.groupColumns.length > 0;
  return [
    `The age by which half of the children met the skill can be estimated for ${known} of ${table.rows.length} ${grouped ? "skills and groups" : "skills"}`,
    ...WINDOW_KINDS.flatMap((kind) => belowSource(read, table.rows, kind, Number(report.settings.level ?? 0.95))),
  ];
}

interface WindowKind {
  readonly share: number;
  readonly one: string;
  readonly many: string;
}

/** Never put together: the close of one kind means something else than the close of the other. */
const WINDOW_KINDS: readonly WindowKind[] = [
  {
    share: 0.99,
    one: "window whose source expects 99 in 100 children by the close",
    many: "windows whose source expects 99 in 100 children by the close",
  },
  {
    share: 0.75,
    one: "age by which the source expects 75 or more in 100 children",
    many: "ages by which the source expects 75 or more in 100 children",
  },
];

/** A share whose upper limit stands below the source's share; by luck alone half of (1 - level) of them would. */
function belowSource(read: TableReader, rows: readonly Row[], kind: WindowKind, level: number): string[] {
  const comparable = rows.filter(
    (row) => read.number(row, "expectedShare") === kind.share && read.number(row, "shareByCloseUpper") !== null,
  );
  if (comparable.length === 0) return [];
  const counting = read.groupColumns.length > 0 ? " (each skill once a group)" : "";
  const below = comparable.filter((row) => (read.number(row, "shareByCloseUpper") as number) < kind.share).length;
  return [
    `Of ${plural(comparable.length, kind.one, kind.many)}, the share here lies below that, limits and all, for ${below}${counting}; ${luckInWords((comparable.length * (1 - level)) / 2)} would by luck alone if the children were like the source's, which a program's children need not be.`,
  ];
}

function luckInWords(expected: number): string {
  return expected < 1 ? "fewer than one" : `about ${Math.round(expected)}`;
}
