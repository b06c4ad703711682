import type { Solver } from "../linear-model";
import { cheapest, greedy } from "./cheapest";

/** From this many hidden cells on, a pattern is also bettered a slice at a time. */
const MANY = 12;
const SLICES = 5;
const LARGE = 300;

/** The search for the pattern of one block: covers that every safe pattern meets, the choice tried now, the best so far. */
export class BlockSearch {
  /** Hidden to protect others, in the attempt under way. */
  trying: readonly number[] = [];
  /** The cheapest that withstood the attack; null: none yet. */
  best: readonly number[] | null = null;
  bestLoss = Infinity;
  /** No safe pattern of the block loses less. */
  bound = 0;
  isDone = false;
  /** Cells that the attempt under way protects, as far as it is known. */
  readonly safe = new Set<number>();
  private readonly isChoice: ReadonlySet<number>;
  private readonly covers = new Map<string, readonly number[]>();
  private isFirst = true;

  constructor(
    private readonly choices: readonly number[],
    private readonly lossOf: (cell: number) => number,
    private readonly solver: Solver,
  ) {
    this.isChoice = new Set(choices);
  }

  get hasChoices(): boolean {
    return this.choices.length > 0;
  }

  /** Too large for every cell that is not safe to be dealt with by itself. */
  get isLarge(): boolean {
    return this.choices.length >= LARGE;
  }

  isFree(cell: number): boolean {
    return this.isChoice.has(cell) && !this.trying.includes(cell);
  }

  allFree(): number[] {
    return this.choices.filter((cell) => this.isFree(cell));
  }

  /** The next attempt: by turns the cheapest choice that meets every cover known, and the best so far with a part of it shown. */
  choose(round: number): void {
    this.safe.clear();
    if (this.best !== null && this.best.length >= MANY && round % 2 === 1) return this.lighten(this.best, round);
    const { cells, bound } = cheapest([...this.covers.values()], this.lossOf, this.solver);
    this.bound = Math.max(this.bound, bound);
    this.trying = cells;
    this.isFirst = true;
    if (this.best !== null && this.bound >= this.bestLoss) this.isDone = true;
  }

  /** Shows every few of the cells that the best pattern hides; what is then proved is hidden again, or something cheaper is. */
  private lighten(best: readonly number[], round: number): void {
    const kept = best.filter((_, at) => (at + (round >> 1)) % SLICES !== 0);
    const isKept = new Set(kept);
    const unmet = [...this.covers.values()].filter((cover) => !cover.some((cell) => isKept.has(cell)));
    this.trying = [...kept, ...greedy(unmet, this.lossOf)];
    this.isFirst = false;
  }

  /**
   * Takes what an attack on the attempt proved; false where it proved nothing, and the attempt stands.
   *
   * @param more - cells to hide besides, which no cover asks for
   */
  meet(covers: readonly (readonly number[])[], more: readonly number[]): boolean {
    if (covers.length === 0 && more.length === 0) {
      this.keep();
      return false;
    }
    covers.forEach((cover) => this.covers.set(cover.join(","), cover));
    const met = covers.filter((cover) => !cover.some((cell) => more.includes(cell)));
    this.trying = [...this.trying, ...more, ...greedy(met, this.lossOf)];
    this.isFirst = false;
    return true;
  }

  /** The bound of all covers met; where the search ended without a safe attempt, all of the block is hidden. */
  finish(): void {
    if (!this.isDone)
      this.bound = Math.max(this.bound, cheapest([...this.covers.values()], this.lossOf, this.solver).bound);
    if (this.best !== null) return;
    this.best = this.choices;
    this.bestLoss = this.loss(this.choices);
  }

  private keep(): void {
    const loss = this.loss(this.trying);
    if (loss < this.bestLoss) {
      this.best = this.trying;
      this.bestLoss = loss;
    }
    if (this.isFirst || this.bestLoss <= this.bound) this.isDone = true;
  }

  private loss(cells: readonly number[]): number {
    return cells.reduce((sum, cell) => sum + this.lossOf(cell), 0);
  }
}
