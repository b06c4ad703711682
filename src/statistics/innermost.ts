import type { DistinctIntervals } from "./index-intervals";

/**
 * The innermost intervals of a set of intervals, and which of them each interval covers.
 *
 * An innermost interval starts at the start of one interval and ends at the end of one, with no other start or end
 * between; only there can the estimate hold mass.
 * Source: Turnbull (1976), J R Stat Soc B 38:290-295; Peto (1973), Appl Stat 22:86-91.
 */
export interface Innermost {
  /** how many there are; the columns below may be longer */
  size: number;
  /** key at which each starts and ends (see `DistinctIntervals`) */
  readonly startKey: Int32Array;
  readonly endKey: Int32Array;
  /** distinct runs of innermost intervals that some interval covers; the three columns below may be longer */
  used: number;
  /** first and last of each run, and how many children have an interval that covers just that run */
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly count: Float64Array;
  readonly rowOfLast: Int32Array;
  readonly startsBefore: Int32Array;
  readonly endsUpTo: Int32Array;
  readonly isStart: Uint8Array;
  readonly isEnd: Uint8Array;
}

/** Workspace of `findInnermost`, so that a bootstrap allocates once. */
export function roomForInnermost(intervals: DistinctIntervals): Innermost {
  const keys = 2 * intervals.ages.length;
  const size = intervals.left.length;
  return {
    size: 0,
    startKey: new Int32Array(Math.min(size, keys)),
    endKey: new Int32Array(Math.min(size, keys)),
    used: 0,
    first: new Int32Array(size),
    last: new Int32Array(size),
    count: new Float64Array(size),
    rowOfLast: new Int32Array(Math.min(size, keys)),
    startsBefore: new Int32Array(keys),
    endsUpTo: new Int32Array(keys),
    isStart: new Uint8Array(keys),
    isEnd: new Uint8Array(keys),
  };
}

/** Fills `workspace` for the intervals whose count is above 0. */
export function findInnermost(intervals: DistinctIntervals, count: Float64Array, workspace: Innermost): void {
  markEnds(intervals, count, workspace);
  walkKeys(workspace);
  workspace.used = 0;
  workspace.rowOfLast.fill(-1, 0, workspace.size);
  for (let index = 0; index < count.length; index += 1) {
    if (count[index] === 0) continue;
    const first = workspace.startsBefore[intervals.left[index]!]!;
    const last = workspace.endsUpTo[intervals.right[index]!]! - 1;
    addCover(workspace, first, last, count[index]!);
  }
}

/** Different intervals may cover the same innermost ones: one row is enough for them. They come ordered by `first`. */
function addCover(workspace: Innermost, first: number, last: number, count: number): void {
  const row = workspace.rowOfLast[last]!;
  if (row >= 0 && workspace.first[row] === first) {
    workspace.count[row]! += count;
    return;
  }
  workspace.first[workspace.used] = first;
  workspace.last[workspace.used] = last;
  workspace.count[workspace.used] = count;
  workspace.rowOfLast[last] = workspace.used;
  workspace.used += 1;
}

function markEnds(intervals: DistinctIntervals, count: Float64Array, workspace: Innermost): void {
  workspace.isStart.fill(0);
  workspace.isEnd.fill(0);
  for (let index = 0; index < count.length; index += 1) {
    if (count[index] === 0) continue;
    workspace.isStart[intervals.left[index]!] = 1;
    workspace.isEnd[intervals.right[index]!] = 1;
  }
}

function walkKeys(workspace: Innermost): void {
  let size = 0;
  let pending = -1;
  for (let key = 0; key < workspace.isStart.length; key += 1) {
    workspace.startsBefore[key] = size;
    if (workspace.isStart[key] === 1) pending = key;
    if (workspace.isEnd[key] === 1 && pending >= 0) {
      workspace.startKey[size] = pending;
      workspace.endKey[size] = key;
      pending = -1;
      size += 1;
    }
    workspace.endsUpTo[key] = size;
  }
  workspace.size = size;
}
