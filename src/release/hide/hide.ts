import { type Attack, attackParts, type Disclosure } from "../attack";
import { type Knowledge, knowledgeOf } from "../knowledge";
import type { Solver } from "../linear-model";
import { partsOf } from "../parts";
import { type CountSystem, isSecret } from "../system";
import { blocksOf } from "./blocks";
import { BlockSearch } from "./block-search";
import { Chains } from "./chains";
import { coverOf } from "./cover";
import { widen } from "./widen";

/** Which cells print as hidden, and how good that choice is. */
export interface Pattern {
  /** 1 for every cell of the release that prints as hidden. */
  readonly hidden: Uint8Array;
  /** What the cells hidden to protect others take from the reader. */
  readonly loss: number;
  /** No safe pattern loses less than this. */
  readonly bound: number;
  /** True where a limit ended the search before the bound was reached. */
  readonly stoppedEarly: boolean;
  /** The attack on the pattern; always made, and always without a disclosure. */
  readonly attack: Attack;
}

/** No pattern is safe: what is out already gives these cells away. */
export class CannotProtect extends Error {
  constructor(readonly cells: readonly number[]) {
    super("What earlier releases show gives counts away that this release must not show.");
  }
}

export interface HideOptions {
  readonly solver: Solver;
  /** Asked between attacks: true ends the search with the best pattern found, once there is a first. */
  readonly isTimeUp?: () => boolean;
  /** Told the number of each round of the search before it begins, from 1. */
  readonly onRound?: (round: number) => void;
}

/** Rounds of search, and unknowns and equations handed to the solver: limits that give the same answer on every machine. */
const ROUNDS = 120;
const WORK = 1_200_000;

/** More covers of one attempt are of less use than those of the next one. */
const COVERS_AN_ATTACK = 10;

/**
 * Hides every small count, and as little else as makes none of them provable.
 *
 * Each attack that proves a count gives a cover: cells of which one more must be hidden. A mixed-integer programme finds
 * the cheapest choice for all covers known; its loss is a bound on every safe pattern. When that choice withstands the
 * attack, it is the best there is; until then the covers of its failure are added (METHOD.md, section 7).
 *
 * @throws {CannotProtect} when not even hiding all protects
 */
export function hide(system: CountSystem, options: HideOptions): Pattern {
  return new Hiding(system, options).run();
}

class Hiding {
  private readonly searches: readonly BlockSearch[];
  private readonly blockOf: Int32Array;
  private readonly chains: Chains;
  private work = 0;

  constructor(
    private readonly system: CountSystem,
    private readonly options: HideOptions,
  ) {
    const { blocks, blockOf } = blocksOf(system);
    const lossOf = (cell: number) => system.cells[cell]!.loss;
    this.blockOf = blockOf;
    this.searches = blocks.map(({ choices }) => new BlockSearch(choices, lossOf, this.solver));
    this.chains = new Chains(system);
  }

  run(): Pattern {
    for (let round = 0; round < ROUNDS; round += 1) {
      const left = this.searches.filter(({ isDone }) => !isDone);
      if (left.length === 0 || this.work > WORK || this.isTimeUp()) break;
      this.options.onRound?.(round + 1);
      left.forEach((search) => search.choose(round));
      this.settle(left);
    }
    this.searches.forEach((search) => search.finish());
    return this.pattern();
  }

  /** Adds to each choice until it withstands the attack, keeping the covers met on the way. */
  private settle(all: readonly BlockSearch[]): void {
    let side: "below" | "above" = "below";
    for (let open = all; open.length > 0 && !this.isTimeUp(); side = side === "below" ? "above" : "below") {
      const knowledge = this.knowledge(({ trying }) => trying);
      const chained = this.bySearch(this.chains.disclosures(knowledge, (cell) => open.includes(this.searchOf(cell)!)));
      const unchained = open.filter((search) => !chained.has(search));
      const { disclosures, leftOpen } = this.attack(knowledge, unchained);
      if (this.isTimeUp()) return;
      const found = new Map([...chained, ...this.bySearch(disclosures)]);
      const many = disclosures.map(({ cell }) => cell).filter((cell) => this.searchOf(cell)!.isLarge);
      const more = this.widen(knowledge, [...leftOpen, ...many], side);
      open = open.filter((search) =>
        search.meet(this.coversOf(search, found.get(search) ?? []), more.get(search) ?? []),
      );
    }
  }

  private attack(knowledge: Knowledge, searches: readonly BlockSearch[]): Pick<Attack, "disclosures" | "leftOpen"> {
    if (searches.length === 0) return { disclosures: [], leftOpen: [] };
    const wanted = new Set(searches);
    const parts = partsOf(this.system, knowledge).filter(({ cells }) => {
      const search = this.searchOf(cells[0] as number);
      return search !== undefined && wanted.has(search);
    });
    const isSafe = (cell: number) => this.searchOf(cell)?.safe.has(cell) === true;
    const options = { solver: this.solver, mostInPart: COVERS_AN_ATTACK, isSafe, isTimeUp: this.isTimeUp };
    const found = attackParts(this.system, knowledge, parts, options);
    const unsafe = new Set([...found.leftOpen, ...found.disclosures.map(({ cell }) => cell)]);
    // what is safe stays so however much more is hidden
    parts.forEach(({ cells }) => cells.forEach((cell) => unsafe.has(cell) || this.searchOf(cell)?.safe.add(cell)));
    return found;
  }

  /** Cells that would put the counts not judged outside their spans, all at once. */
  private widen(knowledge: Knowledge, targets: readonly number[], side: "below" | "above"): Map<BlockSearch, number[]> {
    const more = new Map<BlockSearch, number[]>();
    if (targets.length === 0) return more;
    const searches = new Set(targets.map((cell) => this.searchOf(cell)));
    const isFree = (cell: number) => searches.has(this.searchOf(cell)) && this.searchOf(cell)?.isFree(cell) === true;
    for (const cell of widen(this.system, knowledge, targets, { side, isFree, solver: this.solver })) {
      const search = this.searchOf(cell) as BlockSearch;
      more.set(search, [...(more.get(search) ?? []), cell]);
    }
    return more;
  }

  private coversOf(search: BlockSearch, disclosures: readonly Disclosure[]): number[][] {
    const isFree = (cell: number) => search.isFree(cell);
    const covers = disclosures.map((disclosure) => coverOf(this.system, isFree, disclosure) ?? search.allFree());
    if (covers.some(({ length }) => length === 0)) throw new CannotProtect(disclosures.map(({ cell }) => cell));
    return covers;
  }

  private pattern(): Pattern {
    const knowledge = this.knowledge(({ best }) => best ?? []);
    // however little time is left: what was not attacked is not known to be safe
    const attack = attackParts(this.system, knowledge, partsOf(this.system, knowledge), {
      solver: this.options.solver,
    });
    if (attack.disclosures.length > 0) throw new CannotProtect(attack.disclosures.map(({ cell }) => cell));
    return {
      hidden: this.mask(({ best }) => best ?? []),
      loss: this.sum(({ bestLoss }) => bestLoss),
      bound: this.sum(({ bound }) => bound),
      stoppedEarly: this.searches.some(({ isDone, hasChoices }) => !isDone && hasChoices),
      attack,
    };
  }

  private sum(of: (search: BlockSearch) => number): number {
    return this.searches.reduce((total, search) => total + of(search), 0);
  }

  private readonly solver: Solver = (model, limits) => {
    this.work += model.objective.length + model.rows.length;
    return this.options.solver(model, limits);
  };

  /** Not before a first pattern stands: without one, all would be hidden. */
  private readonly isTimeUp = (): boolean =>
    this.searches.every(({ best }) => best !== null) && this.options.isTimeUp?.() === true;

  private bySearch(disclosures: readonly Disclosure[]): Map<BlockSearch, Disclosure[]> {
    const found = new Map<BlockSearch, Disclosure[]>();
    for (const disclosure of disclosures) {
      const search = this.searchOf(disclosure.cell) as BlockSearch;
      found.set(search, [...(found.get(search) ?? []), disclosure]);
    }
    return found;
  }

  private searchOf(cell: number): BlockSearch | undefined {
    return this.searches[this.blockOf[cell] as number];
  }

  private knowledge(chosen: (search: BlockSearch) => readonly number[]): Knowledge {
    return knowledgeOf(this.system, this.mask(chosen));
  }

  private mask(chosen: (search: BlockSearch) => readonly number[]): Uint8Array {
    const hidden = Uint8Array.from(this.system.cells, (cell) => (isSecret(cell) || cell.showing === "never" ? 1 : 0));
    this.searches.forEach((search) => chosen(search).forEach((cell) => (hidden[cell] = 1)));
    return hidden;
  }
}
