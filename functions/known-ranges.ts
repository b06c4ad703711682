type Range = readonly (readonly unknown[])[];

interface Known {
  readonly range: Range;
  readonly look: string;
  readonly word: number;
}

/** Smaller ranges are their own word. */
const FEW_CELLS = 64;
/** Some tens of megabytes. The ranges of one call stay, however large. */
const MOST_CELLS = 2_000_000;
const MOST_RANGES_OF_A_CALL = 5;
/** Cells that tell most ranges of a shape apart before all are compared. */
const CELLS_LOOKED_AT = 16;

/**
 * A short word for each range, the same for the same cells. A large range is compared cell by cell with those of its look
 * that were seen before: that takes a tenth of the time of a hash of its cells, and takes no two ranges for one.
 */
export class KnownRanges {
  /** Oldest first. */
  private readonly known = new Map<number, Known>();
  private readonly byLook = new Map<string, Set<Known>>();
  private cells = 0;
  private words = 0;

  wordOf(value: unknown): unknown {
    if (!isRange(value) || cellsOf(value) <= FEW_CELLS) return value ?? null;
    const look = lookOf(value);
    const same = [...(this.byLook.get(look) ?? [])].find(({ range }) => isSame(range, value));
    const found = same ?? { range: value.map((row) => [...row]), look, word: (this.words += 1) };
    this.forget(found);
    this.add(found);
    this.makeRoom();
    return { range: found.word };
  }

  private add(known: Known): void {
    this.known.set(known.word, known);
    const alike = this.byLook.get(known.look) ?? new Set();
    this.byLook.set(known.look, alike.add(known));
    this.cells += cellsOf(known.range);
  }

  private makeRoom(): void {
    for (const oldest of this.known.values()) {
      if (this.cells <= MOST_CELLS || this.known.size <= MOST_RANGES_OF_A_CALL) return;
      this.forget(oldest);
    }
  }

  private forget(known: Known): void {
    if (!this.known.delete(known.word)) return;
    const alike = this.byLook.get(known.look);
    alike?.delete(known);
    if (alike?.size === 0) this.byLook.delete(known.look);
    this.cells -= cellsOf(known.range);
  }
}

function isRange(value: unknown): value is Range {
  return Array.isArray(value) && value.every(Array.isArray);
}

function cellsOf(range: Range): number {
  return range.length * (range[0]?.length ?? 0);
}

function lookOf(range: Range): string {
  const cells = Array.from({ length: CELLS_LOOKED_AT }, (_, at) => {
    const row = range[Math.floor((at * (range.length - 1)) / (CELLS_LOOKED_AT - 1))] as readonly unknown[];
    return row[at % row.length];
  });
  return JSON.stringify([range.length, range[0]?.length, cells]);
}

function isSame(one: Range, other: Range): boolean {
  return one.length === other.length && one.every((row, at) => isSameRow(row, other[at]!));
}

function isSameRow(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (!Object.is(one[at], other[at])) return false;
  return true;
}
