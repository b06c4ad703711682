import { COUNTS, type Measure, MEASURES, type Part, PARTS } from "./parts";
import { NOWHERE } from "./standing";

/** Where a child stands with a skill: in which cell, NOWHERE outside the program, and in which box. */
export interface Placed {
  readonly cell: number;
  readonly box: number;
}

/** One child that moved a count, by its id as ids are compared: internal. */
export interface Behind {
  readonly child: string;
  readonly cell: number;
  readonly measure: Measure;
  readonly part: Part;
  readonly change: number;
}

/** The parts of the change of every cell and measure, added up child by child. */
export class Ledger {
  readonly behind: Behind[] = [];
  private readonly sums = new Map<number, Float64Array>();

  /** @param isListed - whether the children behind each part are kept */
  constructor(private readonly isListed: boolean) {}

  add(cell: number, measure: Measure, part: Part, change: number, child: string | null): void {
    const sums = this.sums.get(cell) ?? new Float64Array(MEASURES.length * PARTS.length);
    this.sums.set(cell, sums);
    sums[MEASURES.indexOf(measure) * PARTS.length + PARTS.indexOf(part)]! += change;
    if (this.isListed && child !== null) this.behind.push({ child, cell, measure, part, change });
  }

  /** Adds what one child did to every count of the cell that it came from and of the one that it went to. */
  addMove(child: string, from: Placed, to: Placed, cause: (measure: Measure, end: "from" | "to") => Part): void {
    if (from.cell === to.cell && from.box === to.box) return;
    for (const measure of MEASURES) {
      const [before, now] = [counts(from, measure), counts(to, measure)];
      if (from.cell === to.cell) {
        if (before !== now) this.add(to.cell, measure, cause(measure, "to"), now ? 1 : -1, child);
        continue;
      }
      if (before) this.add(from.cell, measure, cause(measure, "from"), -1, child);
      if (now) this.add(to.cell, measure, cause(measure, "to"), 1, child);
    }
  }

  /** Adds the parts of one cell to those of another. */
  addTo(sum: number, cell: number): void {
    for (const measure of MEASURES) {
      this.partsOf(cell, measure).forEach((change, part) => {
        if (change !== 0) this.add(sum, measure, PARTS[part] as Part, change, null);
      });
    }
  }

  /** In the order of PARTS. */
  partsOf(cell: number, measure: Measure): number[] {
    const start = MEASURES.indexOf(measure) * PARTS.length;
    const sums = this.sums.get(cell);
    return PARTS.map((_, part) => sums?.[start + part] ?? 0);
  }
}

function counts({ cell, box }: Placed, measure: Measure): boolean {
  return cell !== NOWHERE && COUNTS[measure][box] === true;
}
