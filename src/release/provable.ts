import type { Knowledge } from "./knowledge";
import type { Solver } from "./linear-model";
import { type Part, partsOf } from "./parts";
import type { CountSystem } from "./system";

/** What an outsider can prove of one cell. */
export interface Provable {
  readonly cell: number;
  readonly lowest: number;
  /** Null: no end. */
  readonly highest: number | null;
}

/** The lowest and the highest count that agree with everything known, for every cell that is not known outright. */
export function provable(system: CountSystem, knowledge: Knowledge, solver: Solver): Provable[] {
  return partsOf(system, knowledge)
    .flatMap((part) => part.cells.map((cell) => rangeOf(part, cell, knowledge, solver)))
    .sort((one, other) => one.cell - other.cell);
}

function rangeOf(part: Part, cell: number, knowledge: Knowledge, solver: Solver): Provable {
  return {
    cell,
    lowest: reach(part, cell, knowledge, "minimise", solver) as number,
    highest: reach(part, cell, knowledge, "maximise", solver),
  };
}

/** Whole numbers are asked for outright: a bound by fractions may be one that no table reaches. */
function reach(
  part: Part,
  cell: number,
  { lower, upper }: Knowledge,
  sense: "minimise" | "maximise",
  solver: Solver,
): number | null {
  const columnOf = new Map(part.cells.map((each, column) => [each, column]));
  const { status, objective } = solver({
    sense,
    objective: Float64Array.from(part.cells, (each) => (each === cell ? 1 : 0)),
    lower: Float64Array.from(part.cells, (each) => lower[each] as number),
    upper: Float64Array.from(part.cells, (each) => upper[each] as number),
    whole: new Uint8Array(part.cells.length).fill(1),
    rows: part.equations.map(({ cells, coefficients, equals }) => ({
      columns: cells.map((each) => columnOf.get(each) as number),
      coefficients,
      lower: equals,
      upper: equals,
    })),
  });
  if (status === "unbounded") return null;
  if (status !== "optimal") throw new RangeError(`No whole numbers agree with all that is shown (${status}).`);
  return Math.round(objective);
}
