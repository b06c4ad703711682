import type { Knowledge } from "./knowledge";
import type { LinearModel, Solver, SolverLimits } from "./linear-model";
import type { Part } from "./parts";
import { Contradiction } from "./system";

/** What is asked of one part: the sum of weight times count, as low or as high as it goes. */
export interface Question {
  readonly part: Part;
  readonly weights: ReadonlyMap<number, number>;
  /** Tighter upper ends for this question only. */
  readonly caps: ReadonlyMap<number, number>;
}

export interface Answer {
  readonly valueOf: (cell: number) => number;
  /** One multiplier for each equation of the part. */
  readonly duals: readonly number[];
}

/** Unknowns in one call: a solver takes many small parts faster together than one by one, up to a point. */
const COLUMNS_A_CALL = 1500;

/** Answers questions about parts, many in one call: parts share nothing, so each answer is as if it were asked alone. */
export function askAll(
  solver: Solver,
  knowledge: Knowledge,
  sense: LinearModel["sense"],
  questions: readonly Question[],
): Answer[] {
  return batchesOf(questions).flatMap((batch) => askTogether(solver, knowledge, sense, batch));
}

/**
 * The same of one part in whole numbers: the best table found within the limits; null where none is.
 *
 * @param near - an answer in fractions: what is whole in it and far from fractions stays as it is; null: nothing does
 */
export function askWhole(
  solver: Solver,
  { lower, upper }: Knowledge,
  sense: LinearModel["sense"],
  { part, weights, caps }: Question,
  near: Answer["valueOf"] | null,
  limits: SolverLimits,
): Answer["valueOf"] | null {
  const { columnOf, rows, cells } = layOut([part]);
  const isLoose = near === null ? () => true : looseCells(part, near);
  const fixed = (cell: number) => Math.round((near as Answer["valueOf"])(cell));
  const { values } = solver(
    {
      sense,
      objective: Float64Array.from(cells, (cell) => weights.get(cell) ?? 0),
      lower: Float64Array.from(cells, (cell) => (isLoose(cell) ? (lower[cell] as number) : fixed(cell))),
      upper: Float64Array.from(cells, (cell) =>
        isLoose(cell) ? Math.min(caps.get(cell) ?? Infinity, upper[cell] as number) : fixed(cell),
      ),
      whole: new Uint8Array(cells.length).fill(1),
      rows,
    },
    limits,
  );
  return values.length === 0 ? null : (cell) => values[columnOf.get(cell) as number] as number;
}

/** Equations away from a fraction within which an answer may change to become whole. */
const HOPS = 3;

function looseCells({ cells, equations }: Part, valueOf: Answer["valueOf"]): (cell: number) => boolean {
  const loose = new Set(cells.filter((cell) => Math.abs(valueOf(cell) - Math.round(valueOf(cell))) > 1e-6));
  for (let hop = 0; hop < HOPS; hop += 1) {
    const touched = equations.filter((equation) => equation.cells.some((cell) => loose.has(cell)));
    touched.forEach((equation) => equation.cells.forEach((cell) => loose.add(cell)));
  }
  return (cell) => loose.has(cell);
}

function askTogether(
  solver: Solver,
  { lower, upper }: Knowledge,
  sense: LinearModel["sense"],
  questions: readonly Question[],
): Answer[] {
  const { columnOf, rows, cells } = layOut(questions.map(({ part }) => part));
  const objective = new Float64Array(cells.length);
  const capped = Float64Array.from(cells, (cell) => upper[cell] as number);
  for (const { weights, caps } of questions) {
    weights.forEach((weight, cell) => (objective[columnOf.get(cell) as number] = weight));
    caps.forEach((cap, cell) => {
      const column = columnOf.get(cell) as number;
      capped[column] = Math.min(cap, capped[column] as number);
    });
  }
  const bounds = { lower: Float64Array.from(cells, (cell) => lower[cell] as number), upper: capped };
  const { status, values, rowDuals } = solver({ sense, objective, ...bounds, whole: null, rows });
  if (status !== "optimal") throw new Contradiction(`The counts of this release contradict one another (${status}).`);
  let row = 0;
  return questions.map(({ part }) => {
    const duals = Array.from(rowDuals.subarray(row, (row += part.equations.length)));
    return { valueOf: (cell) => values[columnOf.get(cell) as number] as number, duals };
  });
}

function layOut(parts: readonly Part[]) {
  const cells = parts.flatMap((part) => part.cells);
  const columnOf = new Map(cells.map((cell, column) => [cell, column]));
  const rows = parts.flatMap((part) =>
    part.equations.map(({ cells: of, coefficients, equals }) => ({
      columns: of.map((cell) => columnOf.get(cell) as number),
      coefficients,
      lower: equals,
      upper: equals,
    })),
  );
  return { cells, columnOf, rows };
}

function batchesOf(questions: readonly Question[]): Question[][] {
  const batches: Question[][] = [];
  let room = 0;
  for (const question of questions) {
    if (room <= 0) {
      batches.push([]);
      room = COLUMNS_A_CALL;
    }
    batches.at(-1)!.push(question);
    room -= question.part.cells.length;
  }
  return batches;
}
