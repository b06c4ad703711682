import type { Day } from "../../age/day";
import type { Block, Tally } from "../headings/block";
import { NO_DAY } from "../records";

/** Observations whose cells could be read, before they are judged together. Grows by doubling. */
export class Staged {
  length = 0;
  child = new Int32Array(1024);
  skill = new Int32Array(1024);
  day = new Int32Array(1024);
  result = new Uint8Array(1024);
  exact = new Uint8Array(1024);
  observer = new Int32Array(1024);
  entered = new Int32Array(1024);
  /** Where each came from: index into `sources`, sheet row, and the column of its result. */
  source = new Uint16Array(1024);
  row = new Int32Array(1024);
  column = new Uint16Array(1024);
  /** The last day of entry of any row of Observations, also of those that do not count; NO_DAY where none is recorded. */
  lastEntered: Day = NO_DAY;
  readonly sources: { readonly block: Block; readonly tally: Tally }[] = [];

  reserve(more: number): void {
    const needed = this.length + more;
    if (needed <= this.child.length) return;
    const size = Math.max(needed, this.child.length * 2);
    this.child = larger(this.child, new Int32Array(size));
    this.skill = larger(this.skill, new Int32Array(size));
    this.day = larger(this.day, new Int32Array(size));
    this.result = larger(this.result, new Uint8Array(size));
    this.exact = larger(this.exact, new Uint8Array(size));
    this.observer = larger(this.observer, new Int32Array(size));
    this.entered = larger(this.entered, new Int32Array(size));
    this.source = larger(this.source, new Uint16Array(size));
    this.row = larger(this.row, new Int32Array(size));
    this.column = larger(this.column, new Uint16Array(size));
  }
}

function larger<T extends Int32Array | Uint8Array | Uint16Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
