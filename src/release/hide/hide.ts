import { type Attack, attackParts, type Disclosure } from "../attack";
import { knowledgeOf } from "../knowledge";
import type { Solver } from "../linear-model";
import { partsOf } from "../parts";
import { type CountSystem, isSecret } from "../system";
import { type Block, blocksOf } from "./blocks";
import { BlockSearch } from "./block-search";
import { coverOf } from "./cover";

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
  /** Asked between attacks: true ends the search with the best pattern found. */
  readonly isTimeUp?: () => boolean;
  readonly onRound?: (blocksLeft: number, blocks: number) => void;
}

/** Rounds of search per block: a limit that gives the same answer on every machine. */
const ROUNDS = 60;

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
  const { blocks, blockOf } = blocksOf(system);
  const searches = blocks.map(
    ({ choices }) => new BlockSearch(choices, (cell) => system.cells[cell]!.loss, options.solver),
  );
  for (let round = 0; round < ROUNDS; round += 1) {
    const left = searches.filter(({ isDone }) => !isDone);
    if (left.length === 0 || options.isTimeUp?.() === true) break;
    options.onRound?.(left.length, searches.length);
    left.forEach((search) => search.choose());
    settle(system, searches, blockOf, options);
  }
  searches.forEach((search) => search.finish());
  return patternOf(system, searches, blocks, options.solver);
}

/** Adds to each choice until it withstands the attack, keeping the covers met on the way. */
function settle(
  system: CountSystem,
  searches: readonly BlockSearch[],
  blockOf: Int32Array,
  options: HideOptions,
): void {
  for (let open = searches.filter(({ isDone }) => !isDone); open.length > 0 && options.isTimeUp?.() !== true;) {
    const isOpen = new Set(open);
    const found = attackBlocks(system, searches, blockOf, isOpen, options.solver);
    open = open.filter((search) => {
      const disclosures = found.get(search) ?? [];
      const covers = disclosures.map(
        (disclosure) => coverOf(system, (cell) => search.isFree(cell), disclosure) ?? search.allFree(),
      );
      if (covers.some(({ length }) => length === 0)) throw new CannotProtect(disclosures.map(({ cell }) => cell));
      return search.meet(covers);
    });
  }
}

function attackBlocks(
  system: CountSystem,
  searches: readonly BlockSearch[],
  blockOf: Int32Array,
  isOpen: ReadonlySet<BlockSearch>,
  solver: Solver,
): Map<BlockSearch, Disclosure[]> {
  const knowledge = knowledgeOf(
    system,
    maskOf(system, searches, (search) => search.trying),
  );
  const searchOf = (cell: number) => searches[blockOf[cell] as number];
  const parts = partsOf(system, knowledge).filter(({ cells }) => {
    const search = searchOf(cells[0] as number);
    return search !== undefined && isOpen.has(search);
  });
  const found = new Map<BlockSearch, Disclosure[]>();
  for (const disclosure of attackParts(system, knowledge, parts, solver).disclosures) {
    const search = searchOf(disclosure.cell) as BlockSearch;
    found.set(search, [...(found.get(search) ?? []), disclosure]);
  }
  return found;
}

function patternOf(
  system: CountSystem,
  searches: readonly BlockSearch[],
  blocks: readonly Block[],
  solver: Solver,
): Pattern {
  const hidden = maskOf(system, searches, ({ best }) => best ?? []);
  const knowledge = knowledgeOf(system, hidden);
  const attack = attackParts(system, knowledge, partsOf(system, knowledge), solver);
  if (attack.disclosures.length > 0) throw new CannotProtect(attack.disclosures.map(({ cell }) => cell));
  const sum = (of: (search: BlockSearch) => number) => searches.reduce((total, search) => total + of(search), 0);
  return {
    hidden,
    loss: sum(({ bestLoss }) => bestLoss),
    bound: sum(({ bound }) => bound),
    stoppedEarly: searches.some(({ isDone }, at) => !isDone && blocks[at]!.choices.length > 0),
    attack,
  };
}

function maskOf(
  system: CountSystem,
  searches: readonly BlockSearch[],
  chosen: (search: BlockSearch) => readonly number[],
): Uint8Array {
  const hidden = Uint8Array.from(system.cells, (cell) => (cell.showing === "never" || hides(cell) ? 1 : 0));
  searches.forEach((search) => chosen(search).forEach((cell) => (hidden[cell] = 1)));
  return hidden;
}

function hides(cell: CountSystem["cells"][number]): boolean {
  return cell.showing === "table" && isSecret(cell);
}
