import type { Table } from "../../../tables/table";
import { plural } from "../../../words/numbers";
import { readTable, type Row, type TableReader } from "../read-table";

export function ageWhenMetSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const known = table.rows.filter((row) => read.number(row, "p50") !== null).length;
  const grouped = read.groupColumns.length > 0;
  return [
    `For ${known} of ${table.rows.length} ${grouped ? "skills and groups" : "skills"} the records give the age by which half of the children met the skill`,
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
 * Not a test of the program: the limits are approximate and narrow near 100%, and visits that are weeks apart around the
 * close pull the estimate down.
 */
function belowSource(read: TableReader, rows: readonly Row[], kind: WindowKind): string[] {
  const comparable = rows.filter(
    (row) => read.number(row, "expectedShare") === kind.share && read.number(row, "shareByCloseUpper") !== null,
  );
  if (comparable.length === 0) return [];
  const counting = read.groupColumns.length > 0 ? " (each skill counted once per group)" : "";
  const below = comparable.filter((row) => (read.number(row, "shareByCloseUpper") as number) < kind.share).length;
  const share = `Of ${plural(comparable.length, kind.one, kind.many)}, ${below} ${below === 1 ? "has" : "have"} a lower share here, likely range included${counting}.`;
  return [below === 0 ? share : `${share} ${LEANS_LOW}`];
}

const LEANS_LOW =
  "Visits that are weeks apart near the close make this estimate too low. First see how often children were checked near the close.";
