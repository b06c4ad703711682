import type { Observations } from "../records/records";

/**
 * Looks gathered by parcels: runs of 2^childBits neighbouring children, in the order of the sheet within a parcel. A row is
 * the day, the packed rest, and the observer where any is named.
 */
export interface Parcels {
  readonly childBits: number;
  /** Numbers a row: 2, or 3 where observers are named. */
  readonly width: number;
  /** Rows of parcel p stand from `starts[p]` up to, not including, `starts[p + 1]`. */
  readonly starts: Uint32Array;
  readonly rows: Int32Array;
  readonly firstDay: number;
  readonly lastDay: number;
}

/** Skill in bits 0 to 15, result in 16 and 17, exact in 18; the child within its parcel above. */
const RESULT_AT = 16;
const EXACT_AT = 18;
const CHILD_AT = 19;
const MOST_CHILD_BITS = 32 - CHILD_AT;

/** Few enough rows for the nearest caches, and enough that ten million make parcels by the thousand only. */
const PARCEL_ROWS = 8192;

export const unpackLook = {
  skill: (packed: number): number => packed & 0xffff,
  result: (packed: number): number => (packed >>> RESULT_AT) & 3,
  exact: (packed: number): number => (packed >>> EXACT_AT) & 1,
  child: (packed: number): number => packed >>> CHILD_AT,
};

/** @param offsets - where the looks of each child start */
export function gatherParcels(observations: Observations, offsets: Uint32Array): Parcels {
  const childCount = offsets.length - 1;
  const childBits = bitsFor(observations.child.length, childCount);
  const count = Math.ceil(childCount / 2 ** childBits);
  const starts = Uint32Array.from(
    { length: count + 1 },
    (_, parcel) => offsets[Math.min(childCount, parcel * 2 ** childBits)] as number,
  );
  const width = observations.observers.length === 0 ? 2 : 3;
  const rows = new Int32Array(observations.child.length * width);
  scatter(observations, childBits, starts.slice(), rows, width);
  return { childBits, width, starts, rows, ...firstAndLast(observations.day) };
}

function bitsFor(rowCount: number, childCount: number): number {
  let bits = 0;
  while (bits < MOST_CHILD_BITS && (rowCount / childCount) * 2 ** (bits + 1) <= PARCEL_ROWS) bits += 1;
  return bits;
}

function scatter(from: Observations, childBits: number, next: Uint32Array, rows: Int32Array, width: number): void {
  const { child, skill, day, result, exact, observer } = from;
  const within = 2 ** childBits - 1;
  for (let row = 0; row < child.length; row += 1) {
    const who = child[row] as number;
    const place = next[who >> childBits]!++ * width;
    rows[place] = day[row] as number;
    rows[place + 1] =
      (skill[row] as number) |
      ((result[row] as number) << RESULT_AT) |
      ((exact[row] as number) << EXACT_AT) |
      ((who & within) << CHILD_AT);
    if (width === 3) rows[place + 2] = observer[row] as number;
  }
}

function firstAndLast(day: Int32Array): { firstDay: number; lastDay: number } {
  let firstDay = day[0] ?? 0;
  let lastDay = firstDay;
  for (let row = 1; row < day.length; row += 1) {
    const each = day[row] as number;
    if (each < firstDay) firstDay = each;
    if (each > lastDay) lastDay = each;
  }
  return { firstDay, lastDay };
}
