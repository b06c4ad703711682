/**
 * Intervals of age turned into whole numbers, so that ties are exact and an estimate walks arrays instead of ages.
 *
 * Every endpoint becomes a key: twice the rank of its age, plus one where the interval starts just after that age.
 * An interval (after, by] then covers the keys `left` to `right`; a day known exactly has `left === right`.
 */
export interface DistinctIntervals {
  /** distinct ages in days, rising; Infinity last where a child was never seen with the skill */
  readonly ages: Float64Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
  /** children (or their weights) with this very interval */
  readonly count: Float64Array;
  readonly n: number;
}

/**
 * The distinct intervals of a set of children and how many have each, ordered by start and then end.
 *
 * @throws {RangeError} when the columns differ in length or an interval is empty
 */
export function distinctIntervals(after: Float64Array, by: Float64Array, weights?: Float64Array): DistinctIntervals {
  refuseBadIntervals(after, by, weights);
  const ages = distinctAges(after, by);
  const leftOfChild = new Int32Array(after.length);
  const rightOfChild = new Int32Array(after.length);
  for (let child = 0; child < after.length; child += 1) {
    const start = after[child]!;
    const end = by[child]!;
    leftOfChild[child] = 2 * rankOf(ages, start) + (start < end ? 1 : 0);
    rightOfChild[child] = 2 * rankOf(ages, end);
  }
  const keys = 2 * ages.length;
  const byEnd = stableOrder(rightOfChild, keys, null);
  const order = stableOrder(leftOfChild, keys, byEnd);
  return { ages, ...mergeRuns(order, leftOfChild, rightOfChild, weights) };
}

function refuseBadIntervals(after: Float64Array, by: Float64Array, weights?: Float64Array): void {
  if (after.length !== by.length) throw new RangeError("intervals: `after` and `by` differ in length");
  if (weights !== undefined && weights.length !== after.length) {
    throw new RangeError("intervals: `weights` and `after` differ in length");
  }
  for (let child = 0; child < after.length; child += 1) {
    if (!Number.isFinite(after[child]!))
      throw new RangeError(`intervals: \`after\` of row ${child + 1} is not a number`);
    if (!(after[child]! <= by[child]!)) throw new RangeError(`intervals: row ${child + 1} ends before it starts`);
    if (weights !== undefined && !(weights[child]! > 0 && weights[child]! < Infinity)) {
      throw new RangeError(`intervals: the weight of row ${child + 1} is not above 0`);
    }
  }
}

function distinctAges(after: Float64Array, by: Float64Array): Float64Array {
  const all = new Float64Array(2 * after.length);
  all.set(after, 0);
  all.set(by, after.length);
  all.sort();
  let kept = 0;
  for (let index = 0; index < all.length; index += 1) {
    if (index > 0 && all[index] === all[kept - 1]) continue;
    all[kept] = all[index]!;
    kept += 1;
  }
  return all.slice(0, kept);
}

function rankOf(ages: Float64Array, age: number): number {
  let low = 0;
  let high = ages.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ages[middle]! < age) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Counting sort of the children by key, keeping the order of `previous` among equals. */
function stableOrder(keyOfChild: Int32Array, keys: number, previous: Int32Array | null): Int32Array {
  const start = new Int32Array(keys + 1);
  for (let child = 0; child < keyOfChild.length; child += 1) start[keyOfChild[child]! + 1]! += 1;
  for (let key = 0; key < keys; key += 1) start[key + 1]! += start[key]!;
  const order = new Int32Array(keyOfChild.length);
  for (let position = 0; position < order.length; position += 1) {
    const child = previous === null ? position : previous[position]!;
    const key = keyOfChild[child]!;
    order[start[key]!] = child;
    start[key]! += 1;
  }
  return order;
}

function mergeRuns(
  order: Int32Array,
  leftOfChild: Int32Array,
  rightOfChild: Int32Array,
  weights?: Float64Array,
): Omit<DistinctIntervals, "ages"> {
  const left = new Int32Array(order.length);
  const right = new Int32Array(order.length);
  const count = new Float64Array(order.length);
  let last = -1;
  let n = 0;
  for (const child of order) {
    const isNew = last < 0 || left[last] !== leftOfChild[child] || right[last] !== rightOfChild[child];
    if (isNew) last += 1;
    left[last] = leftOfChild[child]!;
    right[last] = rightOfChild[child]!;
    const weight = weights === undefined ? 1 : weights[child]!;
    count[last]! += weight;
    n += weight;
  }
  const size = last + 1;
  return { left: left.slice(0, size), right: right.slice(0, size), count: count.slice(0, size), n };
}
