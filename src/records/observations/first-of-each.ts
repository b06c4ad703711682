/**
 * For each of n rows, the index of the first row that is equal to it, itself where there is none before.
 * An open-addressing table, so that a million rows need no object a row.
 */
export function firstOfEach(
  n: number,
  hash: (i: number) => number,
  same: (i: number, j: number) => boolean,
): Int32Array {
  let size = 16;
  while (size < n * 2) size *= 2;
  const slots = new Int32Array(size).fill(-1);
  const first = new Int32Array(n);
  for (let i = 0; i < n; i += 1) {
    let slot = scramble(hash(i)) & (size - 1);
    while (slots[slot] !== -1 && !same(slots[slot] as number, i)) slot = (slot + 1) & (size - 1);
    if (slots[slot] === -1) slots[slot] = i;
    first[i] = slots[slot] as number;
  }
  return first;
}

/** Mixes three numbers into one 32-bit word. */
export function mix(a: number, b: number, c: number): number {
  return Math.imul(Math.imul(Math.imul(a, 0x9e3779b1) ^ b, 0x85ebca6b) ^ c, 0xc2b2ae35);
}

function scramble(word: number): number {
  const mixed = Math.imul(word ^ (word >>> 16), 0x45d9f3b);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}
