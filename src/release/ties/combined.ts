import type { LedgerEntryBody } from "../ledger-entry";
import { fillCounts } from "./fill";
import { type Cell, type CountSystem, type Equation, type Term } from "../system";

/** The cells of a release and of earlier ones, each count once, with where each stands. */
export class Combined {
  readonly cells: Cell[];
  readonly equations: Equation[];
  /** Cells of each source: the present release first, then the entries of the ledger. */
  readonly sources: Set<number>[];
  /** How many entries showed a count that the present records do not give. */
  changed = 0;
  /** How many counts an earlier release showed that are small by the present rule. */
  smallShown = 0;
  readonly ownCells: number;
  readonly ownEquations: number;
  private readonly indexOf: Map<string, number>;

  constructor(system: CountSystem) {
    this.cells = [...system.cells];
    this.equations = [...system.equations];
    this.ownCells = this.cells.length;
    this.ownEquations = this.equations.length;
    this.indexOf = new Map(this.cells.map(({ key }, index) => [key, index]));
    this.sources = [new Set(this.cells.keys())];
  }

  find(key: string): number | undefined {
    return this.indexOf.get(key);
  }

  /** A new cell, or the one that has its key. */
  put(cell: Cell): number {
    const known = this.indexOf.get(cell.key);
    if (known !== undefined) return known;
    this.indexOf.set(cell.key, this.cells.length);
    return this.cells.push(cell) - 1;
  }

  /**
   * One earlier release: a count that it showed is known to everybody; one that it hid is protected as far as it can be
   * small. What hangs together with a count that has changed since stays out: it is about other records.
   */
  addEntry(entry: LedgerEntryBody): void {
    const odd = changedEquations(entry, (key) => this.countOf(key));
    if (odd.equations.size > 0 || odd.cells > 0) this.changed += 1;
    const places = entry.cells.map((cell, at) => (odd.stays(at) ? this.place(entry, at) : this.knownPlace(cell)));
    this.sources.push(new Set(places.filter((place) => place >= 0)));
    this.tie(
      entry.equations.flatMap(({ terms, equals }, index) =>
        odd.equations.has(index)
          ? []
          : [{ terms: terms.map((term) => ({ ...term, cell: places[term.cell] as number })), equals }],
      ),
    );
  }

  /** Equations that contradict what is known are about records that have changed since: none of them is taken. */
  private tie(equations: readonly Equation[]): void {
    const cells = [...this.cells];
    if (!fillCounts(cells, equations)) {
      this.changed += 1;
      return;
    }
    cells.forEach((cell, index) => (this.cells[index] = cell));
    this.equations.push(...equations);
  }

  private countOf(key: string): number | null {
    const index = this.indexOf.get(key);
    return index === undefined ? null : (this.cells[index]?.count ?? null);
  }

  private place(entry: LedgerEntryBody, at: number): number {
    const { key, place, shown, atLeast } = entry.cells[at]!;
    const known = this.indexOf.get(key);
    if (known !== undefined) return shown === null ? this.raise(known, atLeast) : this.reveal(known, shown);
    const earlier = { key, place: `${place} (an earlier release, ${entry.asOf})`, count: shown, loss: 1 };
    if (shown !== null) return this.put({ ...earlier, showing: "out", secret: null });
    const secret = { low: 1, high: entry.rule.minimumCell - 1 };
    return this.put({ ...earlier, showing: "never", secret, ...(atLeast === undefined ? {} : { atLeast }) });
  }

  /** A row of an earlier release says that its count is not below something, unless records have changed. */
  private raise(index: number, atLeast = 0): number {
    const cell = this.cells[index] as Cell;
    if (atLeast > (cell.atLeast ?? 0) && (cell.count ?? atLeast) >= atLeast) this.cells[index] = { ...cell, atLeast };
    return index;
  }

  /** Beside something that has changed: the count itself may still be the same. */
  private knownPlace({ key, shown }: LedgerEntryBody["cells"][number]): number {
    const known = this.indexOf.get(key);
    return known === undefined || shown === null || this.cells[known]?.count !== shown ? -1 : this.reveal(known, shown);
  }

  private reveal(index: number, count: number): number {
    const cell = this.cells[index] as Cell;
    if (cell.showing !== "out" && cell.secret !== null && cell.count !== null) this.smallShown += 1;
    this.cells[index] = { ...cell, count, showing: "out", secret: null };
    return index;
  }
}

interface Changed {
  readonly equations: ReadonlySet<number>;
  /** Shown counts that are others now. */
  readonly cells: number;
  /** True for a cell that no changed equation hangs on. */
  readonly stays: (cell: number) => boolean;
}

/** Equations of an entry that no longer hold, and all that hang together with them through what was hidden. */
function changedEquations({ cells, equations }: LedgerEntryBody, countOf: (key: string) => number | null): Changed {
  const isChanged = cells.map(({ key, shown }) => shown !== null && (countOf(key) ?? shown) !== shown);
  const known = cells.map(({ key, shown }) => shown ?? countOf(key));
  const hiddenIn = cells.map((): number[] => []);
  equations.forEach(({ terms }, index) =>
    terms.forEach(({ cell }) => {
      if (cells[cell]?.shown === null) hiddenIn[cell]!.push(index);
    }),
  );
  const found = new Set(
    [...equations.keys()].filter((index) => {
      const { terms, equals } = equations[index]!;
      return terms.some(({ cell }) => isChanged[cell]) || !mayHold(terms, equals, known);
    }),
  );
  const gone = new Set<number>();
  for (const index of found) {
    for (const { cell } of equations[index]!.terms) {
      if (cells[cell]?.shown !== null || gone.has(cell)) continue;
      gone.add(cell);
      hiddenIn[cell]!.forEach((other) => found.add(other));
    }
  }
  return {
    equations: found,
    cells: isChanged.filter(Boolean).length,
    stays: (cell) => !isChanged[cell] && !gone.has(cell),
  };
}

function mayHold(terms: readonly Term[], equals: number, known: readonly (number | null)[]): boolean {
  if (terms.some(({ cell }) => known[cell] === null)) return true;
  return terms.reduce((sum, { cell, coefficient }) => sum + coefficient * (known[cell] as number), 0) === equals;
}
