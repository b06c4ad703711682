import type { Knowledge } from "./knowledge";
import type { LinearModel, LinearRow, LinearSolution, Solver, SolverLimits } from "./linear-model";
import { type Part, positionsIn } from "./parts";
import { Contradiction, NoAnswer } from "./system";

/** What is asked of one part: the sum of weight times count, as low or as high as it goes. */
export interface Question {
  readonly part: Part;
  readonly weights: ReadonlyMap<number, number>;
  /** Tighter upper ends for this question only. */
  readonly caps: ReadonlyMap<number, number>;
}

export interface Answer {
  /** One for each cell of the part, in its order. */
  readonly counts: Float64Array;
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

/** One part asked again and again. */
export interface OpenPart {
  readonly ask: (sense: LinearModel["sense"], question: Question) => Answer;
  readonly close: () => void;
}

/** Null where the part is so small that it is asked together with others, or the solver keeps no model open. */
export function openPart({ open }: Solver, { lower, upper }: Knowledge, part: Part): OpenPart | null {
  if (open === undefined || part.cells.length < COLUMNS_ALONE) return null;
  const ends = (end: Float64Array) => Float64Array.from(part.cells, (cell) => end[cell] as number);
  const none = new Float64Array(part.cells.length);
  const own = { lower: ends(lower), upper: ends(upper) };
  const { ask, close } = open({ sense: "minimise", objective: none, ...own, whole: null, rows: rowsOf(part) });
  const positions = positionsIn(part);
  const byColumn = (values: ReadonlyMap<number, number>) =>
    new Map([...values].map(([cell, value]) => [positions.get(cell) as number, value]));
  const tighter = (caps: Question["caps"]) =>
    new Map([...byColumn(caps)].map(([column, cap]) => [column, Math.min(cap, own.upper[column] as number)]));
  return {
    ask: (sense, { weights, caps }) => {
      const { values, rowDuals } = solved(
        ask(sense, byColumn(weights), sense === "maximise" ? tighter(caps) : new Map()),
      );
      return { counts: values, duals: [...rowDuals] };
    },
    close,
  };
}

const COLUMNS_ALONE = 150;

function solved(solution: LinearSolution): LinearSolution {
  const { status } = solution;
  if (status === "infeasible") throw new Contradiction("The counts of this release contradict one another.");
  if (status !== "optimal")
    throw new NoAnswer(`The search for other tables of counts ended without an answer (${status}).`);
  return solution;
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
  near: Answer["counts"] | null,
  limits: SolverLimits,
): Answer["counts"] | null {
  const { cells } = part;
  const isLoose = near === null ? new Uint8Array(cells.length).fill(1) : looseCells(part, near);
  const ends = (end: (cell: number) => number) =>
    Float64Array.from(cells, (cell, at) =>
      isLoose[at] ? end(cell) : Math.round((near as Float64Array)[at] as number),
    );
  const { values } = solver(
    {
      sense,
      objective: Float64Array.from(cells, (cell) => weights.get(cell) ?? 0),
      lower: ends((cell) => lower[cell] as number),
      upper: ends((cell) => Math.min(caps.get(cell) ?? Infinity, upper[cell] as number)),
      whole: new Uint8Array(cells.length).fill(1),
      rows: rowsOf(part),
    },
    limits,
  );
  return values.length === 0 ? null : values;
}

/** Equations away from a fraction within which an answer may change to become whole. */
const HOPS = 3;

/** 1 for the cells that may change. */
function looseCells(part: Part, counts: Float64Array): Uint8Array {
  const isLoose = Uint8Array.from(counts, (count) => (Math.abs(count - Math.round(count)) > 1e-6 ? 1 : 0));
  const rows = rowsOf(part);
  for (let hop = 0; hop < HOPS; hop += 1) {
    const touched = rows.filter(({ columns }) => columns.some((column) => isLoose[column] === 1));
    touched.forEach(({ columns }) => columns.forEach((column) => (isLoose[column] = 1)));
  }
  return isLoose;
}

function askTogether(
  solver: Solver,
  { lower, upper }: Knowledge,
  sense: LinearModel["sense"],
  questions: readonly Question[],
): Answer[] {
  const first = firstColumns(questions);
  const size = first[questions.length] as number;
  const model = { objective: new Float64Array(size), lower: new Float64Array(size), upper: new Float64Array(size) };
  questions.forEach(({ part, weights, caps }, at) => {
    const start = first[at] as number;
    part.cells.forEach((cell, position) => {
      model.lower[start + position] = lower[cell] as number;
      model.upper[start + position] = upper[cell] as number;
    });
    const positions = positionsIn(part);
    weights.forEach((weight, cell) => (model.objective[start + (positions.get(cell) as number)] = weight));
    // only what goes up needs a cap, and a count that is low enough may stand beside one that is higher than its own
    if (sense === "maximise") {
      caps.forEach((cap, cell) => {
        const column = start + (positions.get(cell) as number);
        model.upper[column] = Math.min(cap, model.upper[column] as number);
      });
    }
  });
  const rows = questions.flatMap(({ part }, at) => rowsOf(part).map((row) => ({ ...row, shift: first[at] as number })));
  const { values, rowDuals } = solved(solver({ sense, ...model, whole: null, rows }));
  let row = 0;
  return questions.map(({ part }, at) => ({
    counts: values.subarray(first[at], first[at + 1]),
    duals: Array.from(rowDuals.subarray(row, (row += part.equations.length))),
  }));
}

/** The first column of each question, and behind the last one how many there are. */
function firstColumns(questions: readonly Question[]): Int32Array {
  const first = new Int32Array(questions.length + 1);
  questions.forEach(({ part }, at) => (first[at + 1] = (first[at] as number) + part.cells.length));
  return first;
}

/** The equations of a part over its own cells; worked out once a part. */
function rowsOf(part: Part): readonly LinearRow[] {
  const known = laidOut.get(part);
  if (known) return known;
  const positions = positionsIn(part);
  const rows = part.equations.map(({ cells, coefficients, equals }) => ({
    columns: cells.map((cell) => positions.get(cell) as number),
    coefficients,
    lower: equals,
    upper: equals,
  }));
  laidOut.set(part, rows);
  return rows;
}

const laidOut = new WeakMap<Part, readonly LinearRow[]>();

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
