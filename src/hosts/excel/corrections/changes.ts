import { COLUMNS, type Layout, textOf } from "./columns";
import { cellOf, type PlacedRow, type Row } from "./sheet-rows";

export interface CellChange {
  readonly row: number;
  readonly column: number;
  readonly value: string | number | null;
}

/** What has to be written so that a sheet says what is to be kept. Nothing that stands there is taken away. */
export interface Changes {
  /** Single cells: a correction that is revoked or taken up again changes one. */
  readonly cells: readonly CellChange[];
  readonly added: readonly Row[];
}

/**
 * Compares what is to be kept with the sheet as it is now. `known` is what was last read from or written to it: a row that
 * is known and no longer there was changed or deleted by a person, whose word counts.
 */
export function changesFor(
  rows: readonly Row[],
  placed: readonly PlacedRow[],
  known: readonly Row[],
  { at }: Layout,
): Changes {
  const column = (key: string) => at.get(key);
  const standing = new Map(placed.map((each) => [identityOf(each.row), each]));
  const wasKnown = new Set(known.map(identityOf));
  const cells: CellChange[] = [];
  const added: Row[] = [];
  for (const row of rows) {
    const there = standing.get(identityOf(row));
    if (!there && !wasKnown.has(identityOf(row))) added.push(row);
    if (there) cells.push(...differences(row, there, column));
  }
  return { cells: [...cells, ...revoked(rows, placed, wasKnown, column)], added };
}

type ColumnAt = (key: string) => number | undefined;

function differences(row: Row, there: PlacedRow, column: ColumnAt): CellChange[] {
  return COLUMNS.flatMap(({ key }) => {
    const at = column(key);
    const [now, then] = [cellOf(row, key), cellOf(there.row, key)];
    const isSame = textOf(now) === textOf(then) || (key === "revoked" && row.revoked !== true && then !== "yes");
    return at === undefined || isSame ? [] : [{ row: there.at, column: at, value: now }];
  });
}

/**
 * How the workbook is understood is saved as a whole, so what is left out is revoked. Corrections are left out only where
 * the person starts again without any.
 */
function revoked(
  rows: readonly Row[],
  placed: readonly PlacedRow[],
  wasKnown: ReadonlySet<string>,
  column: ColumnAt,
): CellChange[] {
  const kept = new Set(rows.map(identityOf));
  const isFurther = ({ kind }: Row) => Object.hasOwn(ABOUT, String(kind));
  const startsAgain = rows.length === 0;
  const savesAll = rows.some(isFurther);
  return placed.flatMap(({ at, row }) => {
    const isLeftOut = !kept.has(identityOf(row)) && row.revoked !== true && wasKnown.has(identityOf(row));
    const place = column("revoked");
    const counts = isFurther(row) ? savesAll : startsAgain;
    return isLeftOut && counts && place !== undefined ? [{ row: at, column: place, value: "yes" }] : [];
  });
}

/**
 * How the workbook is understood: what such a row is about, by its kind. One of the same says it anew. All other rows are
 * the same only where every word is.
 */
const ABOUT: Readonly<Record<string, (row: Row) => readonly Row[string][]>> = {
  sheet: ({ sheet, headerRows }) => [sheet, Array.isArray(headerRows) ? (headerRows[0] as number) : null],
  word: ({ word }) => [word],
  name: ({ column, spelling }) => [column, spelling],
  skill: ({ skill }) => [skill],
};

const SAYS = COLUMNS.map(({ key }) => key).filter((key) => key !== "revoked" && key !== "kind");

function identityOf(row: Row): string {
  const kind = String(row.kind ?? "");
  const about = Object.hasOwn(ABOUT, kind) ? ABOUT[kind] : undefined;
  return JSON.stringify([kind, about ? about(row) : SAYS.map((key) => textOf(cellOf(row, key)))]);
}
