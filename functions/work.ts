/** How much a call asks for, in units of about a tenth of a millisecond: a usual row takes no longer. */
export type Work = (...args: readonly unknown[]) => number;

/** Rows of all ranges together; of a range that is wider than long, its columns. */
export function rowsIn(...args: readonly unknown[]): number {
  return args.reduce<number>((sum, value) => sum + lengthOf(value), 0);
}

export function timesRows(unitsARow: number): Work {
  return (...args) => unitsARow * rowsIn(...args);
}

/** Limits of a share that are not Wilson's are searched for, the others come from a formula. */
export function workOfShare(...args: readonly unknown[]): number {
  const [count, of, level, method] = args;
  const isSearched = /exact|mid/i.test(String(firstCell(method) ?? ""));
  return (isSearched ? 80 : 1) * rowsIn(count, of, level);
}

/** Windows that are looked at in the counts and in each of their random repeats. */
export function workOfScan(...args: readonly unknown[]): number {
  const [counts, , maxWidth, replicates] = args;
  const places = Array.isArray(counts) ? counts.length : 1;
  const periods = widthOf(counts);
  const widest = numberOr(maxWidth, Math.max(1, Math.floor(periods / 2)));
  const windows = places * widest * (periods - (widest - 1) / 2);
  return Math.max(rowsIn(counts), (windows * numberOr(replicates, USUAL_REPLICATES)) / WINDOWS_A_UNIT);
}

/** Random repeats of a scan where the call names none. */
export const USUAL_REPLICATES = 999;
const WINDOWS_A_UNIT = 8_000;

function lengthOf(value: unknown): number {
  return Array.isArray(value) ? Math.max(value.length, widthOf(value)) : 0;
}

function widthOf(range: unknown): number {
  const first: unknown = Array.isArray(range) ? range[0] : null;
  return Array.isArray(first) ? first.length : 1;
}

function firstCell(argument: unknown): unknown {
  return Array.isArray(argument) ? firstCell(argument[0]) : argument;
}

/** 0 stands for an empty cell and gives the usual one. */
function numberOr(argument: unknown, usual: number): number {
  return Number(firstCell(argument)) || usual;
}
