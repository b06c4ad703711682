import type { Knowledge } from "./knowledge";
import { type DraftEntry, type DraftTable, HIDDEN, type ReleasedTable, type ReleasedValue } from "./release-table";

/** What prints of each count: itself, the symbol for hidden, a rounded count, a range. */
export type PrintedCount = (cell: number) => ReleasedValue;

/**
 * The tables as they leave: counts as they print, and no figure that gives back a count that does not.
 *
 * @param leastBase - a share of fewer is left out: 0, but for counts that are rounded
 */
export function reveal(
  drafts: readonly DraftTable[],
  printed: PrintedCount,
  figureShows: (needs: readonly number[]) => boolean,
  leastBase = 0,
): ReleasedTable[] {
  return drafts.map(({ rows, ...table }) => ({
    ...table,
    rows: rows.map((row) => row.map((entry) => valueOf(entry, printed, figureShows, leastBase))),
  }));
}

/** A figure shows only where an outsider knows every count that it gives back anyway; give what follows from what is shown. */
export function knownTo({ lower, upper }: Knowledge): (needs: readonly number[]) => boolean {
  return (needs) => needs.every((cell) => lower[cell] === upper[cell]);
}

function valueOf(
  entry: DraftEntry,
  printed: PrintedCount,
  figureShows: (needs: readonly number[]) => boolean,
  leastBase: number,
): ReleasedValue {
  if (entry.kind === "label") return entry.value;
  if (entry.kind === "count") return printed(entry.cell);
  if (entry.needs.length === 2 && isUnder(printed(entry.needs[1]!), leastBase)) return null;
  if (figureShows(entry.needs)) return entry.value;
  return entry.share === undefined ? HIDDEN : shareOf(entry.needs.map(printed), entry.share);
}

function isUnder(of: ReleasedValue, leastBase: number): boolean {
  return typeof of === "number" && of < leastBase;
}

/** The share of two counts as they print; nothing where either does not print as a number. */
function shareOf([count, of]: readonly ReleasedValue[], times: 1 | 100): ReleasedValue {
  if (typeof count !== "number" || typeof of !== "number" || Number.isNaN(count + of)) return HIDDEN;
  return of === 0 ? null : (times * count) / of;
}
