import type { Knowledge } from "./knowledge";
import type { LinearModel, Solver, SolverLimits } from "./linear-model";
import type { Part } from "./parts";

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

/** A table of whole numbers for one part with one cell from `from` to `to`; null where none is found. */
export function askWhole(
  solver: Solver,
  { lower, upper }: Knowledge,
  part: Part,
  aim: { readonly cell: number; readonly from: number; readonly to: number },
  limits: SolverLimits,
): ((cell: number) => number) | null {
  const { columnOf, rows } = layOut([part]);
  const solution = solver(
    {
      sense: "minimise",
      objective: new Float64Array(part.cells.length),
      lower: Float64Array.from(part.cells, (cell) =>
        cell === aim.cell ? Math.max(aim.from, lower[cell]!) : lower[cell]!,
      ),
      upper: Float64Array.from(part.cells, (cell) =>
        cell === aim.cell ? Math.min(aim.to, upper[cell]!) : upper[cell]!,
      ),
      whole: new Uint8Array(part.cells.length).fill(1),
      rows,
    },
    limits,
  );
  return solution.values.length === 0 ? null : (cell) => solution.values[columnOf.get(cell) as number] as number;
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
  if (status !== "optimal") throw new RangeError(`The counts of this release contradict one another (${status}).`);
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
