import type { Highs } from "highs";

/** Counts that nobody may prove a count to lie among, both ends included. */
export interface Inside {
  readonly low: number;
  readonly high: number;
}

interface Sum {
  readonly terms: readonly (readonly [name: number, times: number])[];
  readonly equals: number;
}

/**
 * Whole numbers from 0 up under names, with what is known of them and the equations between them: an outsider's own
 * system, that shares nothing with the one the program protects.
 */
export class Counts {
  private readonly indexOf = new Map<string, number>();
  private readonly lowest: number[] = [];
  private readonly highest: number[] = [];
  private readonly sums = new Map<string, Sum>();

  get names(): readonly string[] {
    return [...this.indexOf.keys()];
  }

  has(name: string): boolean {
    return this.indexOf.has(name);
  }

  of(name: string): number {
    const known = this.indexOf.get(name);
    if (known !== undefined) return known;
    this.indexOf.set(name, this.lowest.length);
    this.lowest.push(0);
    return this.highest.push(Infinity) - 1;
  }

  /** `whole` is the sum of `parts`. */
  adds(whole: string, parts: readonly string[]): void {
    this.tie([[whole, 1], ...parts.map((part) => [part, -1] as const)]);
  }

  /** `less` is no more than `more`; what lies between is a count too. */
  within(less: string, more: string, between: string): void {
    this.adds(more, [less, between]);
  }

  tie(terms: readonly (readonly [name: string, times: number])[], equals = 0): void {
    const times = new Map<number, number>();
    for (const [name, by] of terms) times.set(this.of(name), (times.get(this.of(name)) ?? 0) + by);
    const own = [...times].filter(([, by]) => by !== 0).sort(([one], [other]) => one - other);
    if (own.length > 0) this.sums.set(`${own.join(";")}=${equals}`, { terms: own, equals });
  }

  know(name: string, from: number, to = from): void {
    const at = this.of(name);
    this.lowest[at] = Math.max(this.lowest[at]!, from);
    this.highest[at] = Math.min(this.highest[at]!, to);
    if (this.lowest[at]! > this.highest[at]!) throw new Error(`${name} is said to be two things`);
  }

  /** Null: not known outright. */
  value(name: string): number | null {
    const at = this.indexOf.get(name);
    return at !== undefined && this.lowest[at] === this.highest[at] ? this.lowest[at]! : null;
  }

  /** Takes every equation with one unknown, until there is none. */
  fill(): void {
    const usedBy = this.lowest.map((): Sum[] => []);
    for (const sum of this.sums.values()) sum.terms.forEach(([at]) => usedBy[at]!.push(sum));
    const queue = [...this.sums.values()];
    for (let sum = queue.pop(); sum !== undefined; sum = queue.pop()) {
      const open = sum.terms.filter(([at]) => !this.isKnown(at));
      const rest = sum.terms.reduce(
        (left, [at, by]) => (this.isKnown(at) ? left - by * this.lowest[at]! : left),
        sum.equals,
      );
      if (open.length === 0 && rest !== 0) throw new Error(`does not add up: ${this.words(sum)}`);
      if (open.length !== 1) continue;
      const [at, by] = open[0]!;
      const value = rest / by + 0;
      if (!Number.isSafeInteger(value) || value < this.lowest[at]! || value > this.highest[at]!) {
        throw new Error(`comes to ${value}: ${this.words(sum)}`);
      }
      this.lowest[at] = this.highest[at] = value;
      queue.push(...usedBy[at]!);
    }
  }

  /** Names whose count is proved to lie inside the span given for it; every other one has a table in which it does not. */
  provedInside(spans: ReadonlyMap<string, Inside>, highs: Highs): string[] {
    const left = new Map([...spans].map(([name, span]) => [this.of(name), { name, span }]));
    const proved: string[] = [];
    const components = this.components();
    for (const [at, { name, span }] of left) {
      const component = components.get(at);
      if (component === undefined) {
        if (this.lowest[at]! >= span.low && this.highest[at]! <= span.high) proved.push(name);
        left.delete(at);
        continue;
      }
      const table =
        this.tableWith(component, at, this.lowest[at]!, span.low - 1, highs) ??
        this.tableWith(component, at, span.high + 1, this.highest[at]!, highs);
      if (table === null) proved.push(name);
      left.delete(at);
      for (const [other, each] of table ?? []) {
        const wanted = left.get(other);
        if (wanted && (each < wanted.span.low || each > wanted.span.high)) left.delete(other);
      }
    }
    return proved;
  }

  /** The ends of what a count may be; Infinity: no end. */
  ends(name: string, highs: Highs): readonly [lowest: number, highest: number] {
    const at = this.of(name);
    const component = this.components().get(at);
    if (component === undefined) return [this.lowest[at]!, this.highest[at]!];
    const low = this.solved(component, `Minimize\n obj: x${at}`, new Map(), highs);
    const high = this.solved(component, `Maximize\n obj: x${at}`, new Map(), highs);
    return [low!.get(at)!, high === null ? Infinity : high.get(at)!];
  }

  private isKnown(at: number): boolean {
    return this.lowest[at] === this.highest[at];
  }

  private words({ terms, equals }: Sum): string {
    const names = this.names;
    return `${terms.map(([at, by]) => `${by} ${names[at]}`).join(" + ")} = ${equals}`;
  }

  private tableWith(
    component: Component,
    at: number,
    from: number,
    to: number,
    highs: Highs,
  ): Map<number, number> | null {
    if (from > to) return null;
    return this.solved(component, ` Minimize\n obj: 0 x${at}`, new Map([[at, [from, to]]]), highs);
  }

  /** A table of whole numbers, checked by addition; null where there is none. Asked as text, in the format of CPLEX. */
  private solved(
    { cells, sums }: Component,
    objective: string,
    limits: ReadonlyMap<number, readonly [number, number]>,
    highs: Highs,
  ): Map<number, number> | null {
    const rows = sums.map(({ terms, rest }, row) => {
      const text = terms.map(([at, by]) => `${by < 0 ? "-" : "+"} ${Math.abs(by)} x${at}`);
      return ` c${row}: ${text.join(" ")} = ${rest}`;
    });
    const bounds = cells.map((at) => {
      const [from, to] = limits.get(at) ?? [this.lowest[at]!, this.highest[at]!];
      return ` ${from} <= x${at} <= ${to === Infinity ? "+inf" : to}`;
    });
    const text = [
      objective,
      "Subject To",
      ...rows,
      "Bounds",
      ...bounds,
      "General",
      ...cells.map((at) => ` x${at}`),
      "End",
    ];
    const { Status: status, Columns: columns } = highs.solve(text.join("\n"));
    if (status === "Infeasible" || status.startsWith("Unbounded") || status.includes("infeasible")) return null;
    if (status !== "Optimal") throw new Error(`the outsider's solver ended with ${status}`);
    const table = new Map(cells.map((at) => [at, Math.round((columns[`x${at}`] as { Primal: number }).Primal)]));
    for (const { terms, rest } of sums) {
      const sum = terms.reduce((total, [at, by]) => total + by * table.get(at)!, 0);
      if (sum !== rest) throw new Error("the outsider's table does not add up");
    }
    return table;
  }

  /** What hangs together through unknown counts, under each of them. */
  private components(): Map<number, Component> {
    const parent = this.lowest.map((_, at) => at);
    const rootOf = (at: number): number => {
      while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!;
      return at;
    };
    const open = [...this.sums.values()].flatMap(({ terms, equals }) => {
      const unknown = terms.filter(([at]) => !this.isKnown(at));
      const rest = terms.reduce((left, [at, by]) => (this.isKnown(at) ? left - by * this.lowest[at]! : left), equals);
      if (unknown.length === 0 && rest !== 0) throw new Error(`does not add up: ${this.words({ terms, equals })}`);
      return unknown.length === 0 ? [] : [{ terms: unknown, rest }];
    });
    for (const { terms } of open) terms.forEach(([at]) => (parent[rootOf(at)] = rootOf(terms[0]![0])));
    const byRoot = new Map<number, { cells: number[]; sums: OpenSum[] }>();
    const found = new Map<number, Component>();
    for (const sum of open) {
      const root = rootOf(sum.terms[0]![0]);
      const component = byRoot.get(root) ?? { cells: [], sums: [] };
      byRoot.set(root, component);
      component.sums.push(sum);
      for (const [at] of sum.terms) {
        if (!found.has(at)) component.cells.push(at);
        found.set(at, component);
      }
    }
    return found;
  }
}

interface OpenSum {
  readonly terms: readonly (readonly [number, number])[];
  readonly rest: number;
}

interface Component {
  readonly cells: readonly number[];
  readonly sums: readonly OpenSum[];
}
