import type { Knowledge } from "./knowledge";
import { type Cell, Contradiction, type CountSystem, isSecret } from "./system";

/** Cells that an outsider does not know, with the equations that tie them to one another and to nothing else unknown. */
export interface Part {
  readonly cells: readonly number[];
  readonly equations: readonly OpenEquation[];
}

/** Where each cell of a part stands among its cells; worked out once a part. */
export function positionsIn(part: Pick<Part, "cells">): ReadonlyMap<number, number> {
  const known = positions.get(part);
  if (known) return known;
  const found = new Map(part.cells.map((cell, at) => [cell, at]));
  positions.set(part, found);
  return found;
}

const positions = new WeakMap<Pick<Part, "cells">, ReadonlyMap<number, number>>();

/** An equation with what is known taken out of it. */
export interface OpenEquation {
  /** Index into the equations of the system. */
  readonly equation: number;
  readonly cells: readonly number[];
  readonly coefficients: readonly number[];
  readonly equals: number;
}

/**
 * Splits a system at what is known: what is proved in one part says nothing about another.
 *
 * @param isSpare - cells that may be left out where they are only the sum of others; usually all but secret ones
 */
export function partsOf(
  system: CountSystem,
  knowledge: Knowledge,
  isSpare: (cell: Cell) => boolean = (cell) => !isSecret(cell),
): Part[] {
  const groups = new Groups(system.cells.length);
  const { open, spare } = withoutSpare(
    system,
    system.equations.flatMap((_, index) => openEquation(system, knowledge, index)),
    knowledge,
    isSpare,
  );
  for (const { cells } of open) cells.forEach((cell) => groups.join(cells[0] as number, cell));
  const parts = new Map<number, { cells: number[]; equations: OpenEquation[] }>();
  system.cells.forEach((_, cell) => {
    if (!isOpen(knowledge, cell) || spare.has(cell)) return;
    const root = groups.rootOf(cell);
    const part = parts.get(root) ?? { cells: [], equations: [] };
    part.cells.push(cell);
    parts.set(root, part);
  });
  for (const equation of open) parts.get(groups.rootOf(equation.cells[0] as number))?.equations.push(equation);
  return [...parts.values()];
}

/** @throws {RangeError} when all of an equation is known and it does not hold */
function openEquation(system: CountSystem, knowledge: Knowledge, index: number): OpenEquation[] {
  const { terms, equals } = system.equations[index]!;
  const open = terms.filter(({ cell }) => isOpen(knowledge, cell));
  const rest = terms.reduce(
    (left, { cell, coefficient }) => (isOpen(knowledge, cell) ? left : left - coefficient * knowledge.lower[cell]!),
    equals,
  );
  if (open.length > 0) {
    const cells = open.map(({ cell }) => cell);
    return [{ equation: index, cells, coefficients: open.map(({ coefficient }) => coefficient), equals: rest }];
  }
  if (rest === 0) return [];
  throw new Contradiction(
    `These counts do not add up: ${terms.map(({ cell }) => system.cells[cell]!.place).join("; ")}.`,
  );
}

/**
 * Takes out equations that only define a count nobody asks about: a sum of other counts, in no other equation. It can be
 * worked out from any table of the rest, so it restricts nothing, and would tie parts together for no reason.
 */
function withoutSpare(
  system: CountSystem,
  all: readonly OpenEquation[],
  knowledge: Knowledge,
  isSpare: (cell: Cell) => boolean,
) {
  const uses = new Map<number, OpenEquation[]>();
  for (const equation of all) equation.cells.forEach((cell) => uses.set(cell, [...(uses.get(cell) ?? []), equation]));
  const gone = new Set<OpenEquation>();
  const spare = new Set<number>();
  const left = (cell: number) => (uses.get(cell) ?? []).filter((equation) => !gone.has(equation));
  const queue = [...uses.keys()];
  for (let cell = queue.pop(); cell !== undefined; cell = queue.pop()) {
    if (spare.has(cell) || !isSpare(system.cells[cell]!) || knowledge.lower[cell] !== 0) continue;
    if (knowledge.upper[cell] !== Infinity) continue;
    const [only, ...others] = left(cell);
    if (only === undefined || others.length > 0 || !defines(only, cell)) continue;
    gone.add(only);
    spare.add(cell);
    queue.push(...only.cells.filter((each) => each !== cell));
  }
  return { open: all.filter((equation) => !gone.has(equation)), spare };
}

/** True where the equation makes the cell a whole number from 0 up whatever whole numbers the others are. */
function defines({ cells, coefficients, equals }: OpenEquation, cell: number): boolean {
  const own = coefficients[cells.indexOf(cell)] as number;
  return (
    Math.abs(own) === 1 &&
    equals * own >= 0 &&
    coefficients.every((each, at) => cells[at] === cell || (Number.isInteger(each) && each * own < 0))
  );
}

function isOpen({ lower, upper }: Knowledge, cell: number): boolean {
  return lower[cell] !== upper[cell];
}

/** Which cells belong together, found by joining them two by two. */
class Groups {
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.parent = Int32Array.from({ length: size }, (_, at) => at);
  }

  rootOf(cell: number): number {
    let at = cell;
    while (this.parent[at] !== at) {
      this.parent[at] = this.parent[this.parent[at] as number] as number;
      at = this.parent[at] as number;
    }
    return at;
  }

  join(one: number, other: number): void {
    this.parent[this.rootOf(one)] = this.rootOf(other);
  }
}
