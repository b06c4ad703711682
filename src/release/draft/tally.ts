/**
 * Counts with the number of families behind each. Families must come one after the other: all of one before the next.
 */
export class Tally {
  readonly counts: Uint32Array;
  readonly contributors: Uint32Array;
  private readonly last: Int32Array;

  constructor(size: number) {
    this.counts = new Uint32Array(size);
    this.contributors = new Uint32Array(size);
    this.last = new Int32Array(size).fill(-1);
  }

  add(at: number, family: number): void {
    this.counts[at]! += 1;
    if (this.last[at] === family) return;
    this.last[at] = family;
    this.contributors[at]! += 1;
  }

  /** Count and contributors, as a cell is drafted from them. */
  of(at: number): { readonly count: number; readonly contributors: number } {
    return { count: this.counts[at] as number, contributors: this.contributors[at] as number };
  }
}
