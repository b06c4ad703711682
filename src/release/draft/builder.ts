import { type Cell, type CountSystem, type Equation, smallSpan } from "../system";

export interface CellDraft {
  readonly key: string;
  readonly place: string;
  readonly count: number;
  /** Families behind it, children without a recorded family being one each. */
  readonly contributors: number;
  readonly showing: "table" | "never";
  readonly loss?: number;
  /** A zero that must not be proved either: nobody, or everybody, of a group. */
  readonly zeroIsSecret?: boolean;
}

/** What hiding a count takes from a reader. */
export const LOSS = { children: 6, figure: 4, areaFigure: 3, box: 1 } as const;

/** Gathers the cells and equations of all tables into one system, each cell once whichever tables it stands in. */
export class SystemBuilder {
  private readonly indexOf = new Map<string, number>();
  private readonly cells: Cell[] = [];
  private readonly equations: Equation[] = [];

  constructor(private readonly minimum: number) {}

  /** The index of the cell; one that another table has is shown if either shows it, and keeps its heavier loss. */
  cell(draft: CellDraft): number {
    const known = this.indexOf.get(draft.key);
    if (known !== undefined) return this.again(known, draft);
    const index = this.cells.push(this.made(draft)) - 1;
    this.indexOf.set(draft.key, index);
    return index;
  }

  find(key: string): number | undefined {
    return this.indexOf.get(key);
  }

  at(index: number): Cell {
    return this.cells[index] as Cell;
  }

  /** `whole` is the sum of `parts`; known zeros may be left out of them. */
  adds(whole: number, parts: readonly number[]): void {
    this.balances([whole], parts);
  }

  /** Both sides come to the same; a cell that stands on a side twice counts twice. */
  balances(one: readonly number[], other: readonly number[]): void {
    const coefficients = new Map<number, number>();
    const add = (cell: number, by: number) => coefficients.set(cell, (coefficients.get(cell) ?? 0) + by);
    one.forEach((cell) => add(cell, 1));
    other.forEach((cell) => add(cell, -1));
    const terms = [...coefficients].flatMap(([cell, coefficient]) =>
      coefficient === 0 ? [] : [{ cell, coefficient }],
    );
    if (terms.length > 0) this.equations.push({ terms, equals: 0 });
  }

  system(): CountSystem {
    return { cells: this.cells, equations: this.equations };
  }

  private made({ key, place, count, contributors, showing, loss, zeroIsSecret }: CellDraft): Cell {
    const zero = zeroIsSecret === true && count === 0 ? { low: 0, high: 0 } : null;
    return {
      key,
      place,
      count,
      showing,
      secret: smallSpan(count, contributors, this.minimum) ?? zero,
      loss: loss ?? 1,
    };
  }

  private again(index: number, draft: CellDraft): number {
    const cell = this.at(index);
    if (cell.count !== draft.count) throw new RangeError(`Two tables count this differently: ${draft.place}.`);
    const more = this.made(draft);
    const isShown = cell.showing === "table" || more.showing === "table";
    this.cells[index] = {
      ...cell,
      place: cell.showing !== "table" && more.showing === "table" ? more.place : cell.place,
      showing: isShown ? "table" : "never",
      secret: cell.secret ?? more.secret,
      loss: Math.max(cell.loss, more.loss),
    };
    return index;
  }
}
