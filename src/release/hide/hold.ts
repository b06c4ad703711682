import { type Attack, attackParts } from "../attack";
import { type Knowledge, knowledgeOf } from "../knowledge";
import { partsOf } from "../parts";
import { type CountSystem, isSecret } from "../system";
import { isOutside } from "../witness";
import { greedy } from "./cheapest";
import { coverOf } from "./cover";
import { CannotProtect, type HideOptions } from "./hide";

/** A pattern that withstands the attack on everything that the counts say of one another. */
export interface Held {
  readonly hidden: Uint8Array;
  readonly knowledge: Knowledge;
  readonly attack: Attack;
}

/**
 * Hides more until the attack proves nothing: of the shown counts that a proof rests on, the one that costs least. What is
 * safe stays so however much more is hidden, so that only the rest is attacked again.
 *
 * @param isOwn - cells that may still be hidden: printed by this release
 * @throws {CannotProtect} when a proof rests on no figure of this release
 */
export function hold(
  system: CountSystem,
  hidden: Uint8Array,
  isOwn: (cell: number) => boolean,
  { solver, onRound, isTimeUp }: HideOptions,
): Held {
  const mask = new Uint8Array(system.cells.length);
  mask.set(hidden);
  const safe = new Set<number>();
  const witnesses: Attack["witnesses"][number][] = [];
  for (let round = 1; ; round += 1) {
    const knowledge = knowledgeOf(system, mask);
    const isSafe = (cell: number) => safe.has(cell);
    const found = attackParts(system, knowledge, partsOf(system, knowledge), { solver, isSafe });
    witnesses.push(...found.witnesses);
    found.witnesses.forEach((witness) => provenBy(system, witness).forEach((cell) => safe.add(cell)));
    if (found.disclosures.length === 0) {
      return { hidden: mask, knowledge, attack: { ...found, attacked: safe.size, witnesses } };
    }
    onRound?.(round);
    const isFree = (cell: number) => isOwn(cell) && mask[cell] === 0 && system.cells[cell]!.showing === "table";
    const covers = found.disclosures.map(
      (disclosure) => coverOf(system, isFree, disclosure) ?? nearTo(system, disclosure.cell, isFree),
    );
    if (covers.some(({ length }) => length === 0)) throw new CannotProtect(found.disclosures.map(({ cell }) => cell));
    // with no time left, all that the proofs rest on: more is lost, and the end comes soon
    const more = isTimeUp?.() === true ? covers.flat() : greedy(covers, (cell) => system.cells[cell]!.loss);
    more.forEach((cell) => (mask[cell] = 1));
  }
}

/** Secret cells that lie outside their spans in a witness. */
function provenBy({ cells }: CountSystem, witness: Attack["witnesses"][number]): number[] {
  return witness.cells.filter(
    (cell, at) => isSecret(cells[cell]!) && isOutside(witness.counts[at] as number, cells[cell]!.secret!),
  );
}

/**
 * Where no fraction proves a count and no table was found either: what stands in an equation with it, or in one of those;
 * farther away where all of that is hidden already.
 */
function nearTo({ equations }: CountSystem, cell: number, isFree: (cell: number) => boolean): number[] {
  const near = new Set([cell]);
  for (let hop = 1, reached = 0; reached < near.size; hop += 1) {
    reached = near.size;
    const touched = equations.filter(({ terms }) => terms.some((term) => near.has(term.cell)));
    touched.forEach(({ terms }) => terms.forEach((term) => near.add(term.cell)));
    const free = hop < HOPS ? [] : [...near].filter(isFree);
    if (free.length > 0) return free;
  }
  return [...near].filter(isFree);
}

const HOPS = 3;
