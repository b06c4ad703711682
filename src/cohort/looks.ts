import type { Observations } from "../records/records";

/** Every look, sorted by child and then by day, as columns: the order in which all tables are made in one pass. */
export interface Looks {
  /** Looks of child c stand from `offsets[c]` up to, not including, `offsets[c + 1]`. */
  readonly offsets: Uint32Array;
  readonly skill: Uint16Array;
  readonly day: Int32Array;
  readonly result: Uint8Array;
  readonly exact: Uint8Array;
  readonly observer: Int32Array;
}

/** Sorts by child with one counting sort, which keeps the order of the sheet, then puts right each child out of day order. */
export function sortLooks(observations: Observations, childCount: number): Looks {
  const offsets = startOfEachChild(observations.child, childCount);
  const order = rowsByChild(observations.child, offsets);
  for (let child = 0; child < childCount; child += 1) {
    sortByDay(order, observations.day, offsets[child] as number, offsets[child + 1] as number);
  }
  return {
    offsets,
    skill: gather(observations.skill, order, new Uint16Array(order.length)),
    day: gather(observations.day, order, new Int32Array(order.length)),
    result: gather(observations.result, order, new Uint8Array(order.length)),
    exact: gather(observations.exact, order, new Uint8Array(order.length)),
    observer: gather(observations.observer, order, new Int32Array(order.length)),
  };
}

function startOfEachChild(child: Int32Array, childCount: number): Uint32Array {
  const offsets = new Uint32Array(childCount + 1);
  for (let row = 0; row < child.length; row += 1) offsets[(child[row] as number) + 1]! += 1;
  for (let index = 0; index < childCount; index += 1) offsets[index + 1]! += offsets[index] as number;
  return offsets;
}

function rowsByChild(child: Int32Array, offsets: Uint32Array): Uint32Array {
  const next = offsets.slice();
  const order = new Uint32Array(child.length);
  for (let row = 0; row < child.length; row += 1) order[next[child[row] as number]!++] = row;
  return order;
}

const FEW = 48;

function sortByDay(order: Uint32Array, day: Int32Array, start: number, end: number): void {
  for (let at = start + 1; at < end; at += 1) {
    if ((day[order[at] as number] as number) < (day[order[at - 1] as number] as number)) {
      if (end - start <= FEW) insertByDay(order, day, start, end);
      else sortManyByDay(order, day, start, end);
      return;
    }
  }
}

function insertByDay(order: Uint32Array, day: Int32Array, start: number, end: number): void {
  for (let at = start + 1; at < end; at += 1) {
    const row = order[at] as number;
    const rowDay = day[row] as number;
    let to = at;
    while (to > start && (day[order[to - 1] as number] as number) > rowDay) {
      order[to] = order[to - 1] as number;
      to -= 1;
    }
    order[to] = row;
  }
}

/** Days and rows packed in one number, so that the native numeric sort does the work and stays stable. */
function sortManyByDay(order: Uint32Array, day: Int32Array, start: number, end: number): void {
  const rows = 4_294_967_296;
  const keys = Float64Array.from(order.subarray(start, end), (row) => (day[row] as number) * rows + row).sort();
  for (let at = 0; at < keys.length; at += 1) {
    const key = keys[at] as number;
    order[start + at] = key - Math.floor(key / rows) * rows;
  }
}

function gather<Column extends Uint8Array | Uint16Array | Int32Array>(
  from: Column,
  order: Uint32Array,
  to: Column,
): Column {
  for (let at = 0; at < order.length; at += 1) to[at] = from[order[at] as number] as number;
  return to;
}
