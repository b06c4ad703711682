import type { Table } from "../../../tables/table";
import { plural } from "../../../words/numbers";
import { readTable, type Row, type TableReader } from "../read-table";

export function ageWhenMetSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50") !== null).length;
  const grouped = read.groupColumns.length > 0;
  return [
    `The age by which half of the children met the skill can be estimated for ${known} of ${table.rows.length} ${grouped ? "skills and groups" : "skills"}`,
    ...WINDOW_KINDS.flatMap((kind) => belowSource(read, table.rows, kind)),
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

/**
 * No test of the program: the limits are approximate and narrow near 100%, and looks that are weeks apart around the close
 * pull the estimate down.
 */
function belowSource(read: TableReader, rows: readonly Row[], kind: WindowKind): string[] {
  const comparable = rows.filter(
    (row) => read.number(row, "expectedShare") === kind.share && read.number(row, "shareByCloseUpper") !== null,
  );
  if (comparable.length === 0) return [];
  const counting = read.groupColumns.length > 0 ? " (each skill once a group)" : "";
  const below = comparable.filter((row) => (read.number(row, "shareByCloseUpper") as number) < kind.share).length;
  const share = `Of ${plural(comparable.length, kind.one, kind.many)}, the estimated share here lies below that for ${below}${counting}, its approximate limits included.`;
  return [below === 0 ? share : `${share} ${LEANS_LOW}`];
}

const LEANS_LOW =
  "Looks weeks apart around the close make such an estimate lean low: before reading anything into it, see how often children were looked at near the close.";
