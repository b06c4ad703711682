import type { Highs, Model, ModelData } from "highs";
import type { LinearModel, LinearSolution, OpenModel, Solver, SolverLimits } from "./linear-model";

/** The parts of `highs` that are used; a host loads it once (it is WebAssembly) and hands it over. */
export type LoadedHighs = Pick<Highs, "createModel">;

const CONTINUOUS = 0;
const WHOLE = 1;
const STATUS_OF: Readonly<Record<number, LinearSolution["status"]>> = {
  7: "optimal",
  8: "infeasible",
  // unbounded or infeasible: every system here has a solution, the true counts
  9: "unbounded",
  10: "unbounded",
};

/** The solver of a host that has loaded HiGHS (Huangfu & Hall, 2018, Math Program Comput 10:119). One thread, one answer. */
export function highsSolver(highs: LoadedHighs): Solver {
  const solver = (model: LinearModel, limits?: SolverLimits) => {
    const native = highs.createModel(dataOf(model));
    try {
      return solve(native, model, limits ?? {});
    } finally {
      native.dispose();
    }
  };
  return Object.assign(solver, { open: (model: LinearModel) => opened(highs.createModel(dataOf(model)), model) });
}

function opened(native: Model, model: LinearModel): OpenModel {
  let asked: { readonly weights: ReadonlyMap<number, number>; readonly upper: ReadonlyMap<number, number> } | null =
    null;
  return {
    ask: (sense, weights, upper) => {
      asked?.weights.forEach((_, column) => native.changeColCost(column, 0));
      asked?.upper.forEach((_, column) => native.changeColBounds(column, model.lower[column]!, model.upper[column]!));
      weights.forEach((weight, column) => native.changeColCost(column, weight));
      upper.forEach((end, column) => native.changeColBounds(column, model.lower[column]!, end));
      native.changeObjectiveSense(senseOf(sense));
      asked = { weights, upper };
      return solve(native, model, {});
    },
    close: () => native.dispose(),
  };
}

function senseOf(sense: LinearModel["sense"]) {
  return (sense === "minimise" ? 1 : -1) as NonNullable<ModelData["sense"]>;
}

function solve(native: Model, model: LinearModel, limits: SolverLimits): LinearSolution {
  native.options.set({
    output_flag: false,
    random_seed: 0,
    mip_rel_gap: limits.gap ?? 0,
    mip_abs_gap: 0.999e-3,
    ...(limits.nodes === undefined ? {} : { mip_max_nodes: limits.nodes }),
    ...(limits.seconds === undefined ? {} : { time_limit: limits.seconds }),
  });
  const { modelStatus } = native.run();
  const status = STATUS_OF[modelStatus] ?? "stopped";
  const none = new Float64Array(0);
  if (status === "infeasible" || status === "unbounded") {
    return { status, objective: NaN, bound: NaN, values: none, rowDuals: none };
  }
  const isWhole = model.whole !== null;
  const objective = native.getObjectiveValue();
  const { colValue, rowDual } = native.getSolution();
  const found = Number.isFinite(objective) && Math.abs(objective) < 1e29;
  return {
    status,
    objective: found ? objective : NaN,
    bound: isWhole ? Number(native.info.get("mip_dual_bound")) : objective,
    values: found ? colValue : none,
    rowDuals: isWhole ? none : rowDual,
  };
}

function dataOf(model: LinearModel): ModelData {
  const { sense, objective, lower, upper, whole, rows } = model;
  return {
    numCols: objective.length,
    numRows: rows.length,
    sense: senseOf(sense),
    colCost: objective,
    colLower: lower,
    colUpper: upper,
    rowLower: Float64Array.from(rows, (row) => row.lower),
    rowUpper: Float64Array.from(rows, (row) => row.upper),
    matrix: {
      format: "csr",
      numRows: rows.length,
      numCols: objective.length,
      ...entriesOf(rows),
    },
    ...(whole === null ? {} : { integrality: Int32Array.from(whole, (is) => (is === 1 ? WHOLE : CONTINUOUS)) }),
  };
}

/** The rows one after another, as the solver takes them: filled in place, since there may be a hundred thousand of them a second. */
function entriesOf(rows: LinearModel["rows"]) {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach(({ columns }, row) => (starts[row + 1] = (starts[row] as number) + columns.length));
  const indices = new Int32Array(starts[rows.length] as number);
  const values = new Float64Array(indices.length);
  let next = 0;
  for (const { columns, coefficients, shift = 0 } of rows) {
    for (let at = 0; at < columns.length; at += 1, next += 1) {
      indices[next] = (columns[at] as number) + shift;
      values[next] = coefficients[at] as number;
    }
  }
  return { starts, indices, values };
}
