import type { Highs, Model as Native } from "highs";

/** A sum of unknowns: how often each is in it. */
export type Sum = ReadonlyMap<number, number>;

export function sumOf(columns: Iterable<number>): Map<number, number> {
  const sum = new Map<number, number>();
  for (const column of columns) sum.set(column, (sum.get(column) ?? 0) + 1);
  return sum;
}

/** `one` less `other`. */
export function less(one: Sum, other: Sum): Map<number, number> {
  return plus(one, other, -1);
}

export function plus(one: Sum, other: Sum, times = 1): Map<number, number> {
  const sum = new Map(one);
  for (const [column, by] of other) sum.set(column, (sum.get(column) ?? 0) + times * by);
  return sum;
}

export interface Solved {
  readonly status: "optimal" | "unbounded" | "infeasible" | "stopped";
  readonly objective: number;
  readonly values: Float64Array;
}

const STATUS: Readonly<Record<number, Solved["status"]>> = {
  7: "optimal",
  8: "infeasible",
  9: "unbounded",
  10: "unbounded",
};

/** Unknown counts of people from 0 up, and what is known of their sums. */
export class Unknowns {
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  private readonly rows: { readonly sum: Sum; readonly low: number; readonly high: number }[] = [];

  column(): number {
    this.lower.push(0);
    return this.upper.push(Infinity) - 1;
  }

  columns(count: number): number[] {
    return Array.from({ length: count }, () => this.column());
  }

  know(sum: Sum, low: number, high = low): void {
    if (sum.size > 0 && (low > -Infinity || high < Infinity)) this.rows.push({ sum, low, high });
  }

  same(one: Sum, other: Sum): void {
    this.know(less(one, other), 0);
  }

  /** `part` is no more than `whole`. */
  within(part: Sum, whole: Sum): void {
    this.know(less(whole, part), 0, Infinity);
  }

  /** An unknown for a sum, so that its ends can be asked for. */
  named(sum: Sum): number {
    const column = this.column();
    this.lower[column] = -Infinity;
    this.same(new Map([[column, 1]]), sum);
    return column;
  }

  solver(highs: Highs): Asking {
    const starts = new Int32Array(this.rows.length + 1);
    this.rows.forEach(({ sum }, row) => (starts[row + 1] = (starts[row] as number) + sum.size));
    const model = highs.createModel({
      numCols: this.lower.length,
      numRows: this.rows.length,
      sense: 1 as never,
      colCost: new Float64Array(this.lower.length),
      colLower: Float64Array.from(this.lower),
      colUpper: Float64Array.from(this.upper),
      rowLower: Float64Array.from(this.rows, ({ low }) => low),
      rowUpper: Float64Array.from(this.rows, ({ high }) => high),
      matrix: {
        format: "csr",
        numRows: this.rows.length,
        numCols: this.lower.length,
        starts,
        indices: Int32Array.from(this.rows.flatMap(({ sum }) => [...sum.keys()])),
        values: Float64Array.from(this.rows.flatMap(({ sum }) => [...sum.values()])),
      },
    });
    return new Asking(model);
  }
}

/** One model asked again and again: each answer begins where the last one ended. */
export class Asking {
  private costs: Sum = new Map();

  constructor(private readonly model: Native) {
    model.options.set({ output_flag: false, random_seed: 0 });
  }

  /** The most that a sum can be. */
  most(costs: Sum): Solved {
    for (const column of this.costs.keys()) this.model.changeColCost(column, 0);
    for (const [column, by] of costs) this.model.changeColCost(column, -by);
    this.costs = costs;
    const { modelStatus } = this.model.run();
    const status = STATUS[modelStatus] ?? "stopped";
    if (status !== "optimal") return { status, objective: NaN, values: new Float64Array(0) };
    return { status, objective: -this.model.getObjectiveValue(), values: this.model.getSolution().colValue };
  }

  bounds(column: number, low: number, high: number): void {
    this.model.changeColBounds(column, low, high);
  }

  done(): void {
    this.model.dispose();
  }
}
