import type { Solver } from "../linear-model";
import { cheapest, greedy } from "./cheapest";

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

  isFree(cell: number): boolean {
    return this.isChoice.has(cell) && !this.trying.includes(cell);
  }

  allFree(): number[] {
    return this.choices.filter((cell) => this.isFree(cell));
  }

  /** The cheapest choice that meets every cover known. */
  choose(): void {
    const { cells, bound } = cheapest([...this.covers.values()], this.lossOf, this.solver);
    this.bound = Math.max(this.bound, bound);
    this.trying = cells;
    this.isFirst = true;
    if (this.best !== null && this.bound >= this.bestLoss) this.isDone = true;
  }

  /** Takes what an attack on the attempt proved; false where it proved nothing, and the attempt stands. */
  meet(covers: readonly (readonly number[])[]): boolean {
    if (covers.length === 0) {
      this.keep();
      return false;
    }
    covers.forEach((cover) => this.covers.set(cover.join(","), cover));
    this.trying = [...this.trying, ...greedy(covers, this.lossOf)];
    this.isFirst = false;
    return true;
  }

  /** Where the search ended without a safe attempt, all of the block is hidden. */
  finish(): void {
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
