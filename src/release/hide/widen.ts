import type { Knowledge } from "../knowledge";
import type { LinearRow, Solver } from "../linear-model";
import type { CountSystem } from "../system";

/**
 * Cells to hide besides, so that many secret counts at once can lie outside their spans: those that one table moves.
 *
 * The table is the cheapest found by a linear programme that takes every unit by which a shown count moves as a part of
 * its loss, and every secret count that stays inside its span as dearer than any of them. Not the least loss, but few
 * programmes for hundreds of counts.
 *
 * @param side - whether the secret counts are to go below their spans or above
 */
export function widen(
  system: CountSystem,
  knowledge: Knowledge,
  targets: readonly number[],
  {
    side,
    isFree,
    solver,
  }: { readonly side: "below" | "above"; readonly isFree: (cell: number) => boolean; readonly solver: Solver },
): number[] {
  const columns = new Columns(system, knowledge, isFree);
  const aims = new Set(targets);
  const { objective, lower, upper } = columns.programme((cell) => {
    const { count, secret } = system.cells[cell]!;
    const { low, high } = secret ?? { low: 0, high: 0 };
    // what nobody here knows may stand far above its span already
    if (!aims.has(cell) || count === null) return { cost: 0, cap: Infinity };
    if (side === "below") return { cost: low === 0 ? 0 : STAYS / low, cap: Infinity };
    return { cost: -STAYS / Math.max(1, high), cap: high + 1 };
  });
  const rows = columns.rows();
  let moved: number[] = [];
  for (let pass = 0; pass < PASSES; pass += 1) {
    const { status, values } = solver({ sense: "minimise", objective, lower, upper, whole: null, rows });
    if (status !== "optimal") return moved;
    moved = columns.moved(values);
    columns.reweigh(objective, values);
  }
  return moved;
}

/**
 * Each pass makes a unit of what hardly moved dearer, so that the next moves fewer cells further: a programme counts
 * units, and a hidden cell costs the same however far it moves (after Candes, Wakin & Boyd, 2008, J Fourier Anal Appl 14:877).
 */
const PASSES = 3;

/** What a secret count costs that stays where it is: more than any one shown count. */
const STAYS = 200;

/** The unknowns: one for each hidden cell, and for each shown one that may be hidden, how far it moves up and down. */
class Columns {
  private readonly first = new Map<number, number>();
  private readonly cells: number[] = [];
  private size = 0;

  constructor(
    private readonly system: CountSystem,
    private readonly knowledge: Knowledge,
    private readonly isFree: (cell: number) => boolean,
  ) {
    system.cells.forEach((_, cell) => {
      const isHidden = knowledge.lower[cell] !== knowledge.upper[cell];
      if (!isHidden && !isFree(cell)) return;
      this.first.set(cell, this.size);
      this.cells.push(cell);
      this.size += isHidden ? 1 : 2;
    });
  }

  programme(aim: (cell: number) => { readonly cost: number; readonly cap: number }) {
    const objective = new Float64Array(this.size);
    const lower = new Float64Array(this.size);
    const upper = new Float64Array(this.size).fill(Infinity);
    for (const cell of this.cells) {
      const column = this.first.get(cell) as number;
      const { count, loss, atLeast = 0 } = this.system.cells[cell]!;
      if (this.isShown(cell)) {
        objective[column] = loss / ((count as number) || 1);
        objective[column + 1] = objective[column] as number;
        upper[column + 1] = (count as number) - atLeast;
      } else {
        const { cost, cap } = aim(cell);
        lower[column] = this.knowledge.lower[cell] as number;
        objective[column] = cost;
        upper[column] = cap;
      }
    }
    return { objective, lower, upper };
  }

  rows(): LinearRow[] {
    return this.system.equations.flatMap(({ terms, equals }) => {
      const columns: number[] = [];
      const coefficients: number[] = [];
      let rest = equals;
      for (const { cell, coefficient } of terms) {
        const column = this.first.get(cell);
        if (column === undefined || this.isShown(cell)) rest -= coefficient * (this.knowledge.lower[cell] as number);
        if (column === undefined) continue;
        columns.push(column);
        coefficients.push(coefficient);
        if (!this.isShown(cell)) continue;
        columns.push(column + 1);
        coefficients.push(-coefficient);
      }
      return columns.length === 0 ? [] : [{ columns, coefficients, lower: rest, upper: rest }];
    });
  }

  reweigh(objective: Float64Array, values: Float64Array): void {
    for (const cell of this.cells) {
      if (!this.isShown(cell)) continue;
      const column = this.first.get(cell) as number;
      const units = (values[column] as number) + (values[column + 1] as number);
      objective[column] = objective[column + 1] = this.system.cells[cell]!.loss / (units + 0.5);
    }
  }

  moved(values: Float64Array): number[] {
    return this.cells.filter((cell) => {
      const column = this.first.get(cell) as number;
      return this.isShown(cell) && values[column]! + values[column + 1]! > 1e-6;
    });
  }

  private isShown(cell: number): boolean {
    return this.knowledge.lower[cell] === this.knowledge.upper[cell] && this.isFree(cell);
  }
}
