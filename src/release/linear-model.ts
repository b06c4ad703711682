/** A linear programme, with whole unknowns where asked for. Columns are the unknowns, rows the equations. */
export interface LinearModel {
  readonly sense: "minimise" | "maximise";
  /** One coefficient a column. */
  readonly objective: Float64Array;
  /** Bounds of each column; Infinity: none. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** 1: a whole number. Null: none is. */
  readonly whole: Uint8Array | null;
  readonly rows: readonly LinearRow[];
}

export interface LinearRow {
  readonly columns: readonly number[];
  /** Added to each column, so that rows can be laid out once and used in many programmes; left out: 0. */
  readonly shift?: number;
  readonly coefficients: readonly number[];
  /** Infinity: none. */
  readonly lower: number;
  readonly upper: number;
}

export interface LinearSolution {
  /** `stopped`: a limit was reached; `values` is the best found, if any. */
  readonly status: "optimal" | "infeasible" | "unbounded" | "stopped";
  readonly objective: number;
  /** Nothing better than this is possible; equal to `objective` where optimal. */
  readonly bound: number;
  /** Empty where there is no solution. */
  readonly values: Float64Array;
  /** Of each row, for programmes without whole unknowns; empty otherwise. */
  readonly rowDuals: Float64Array;
}

export interface SolverLimits {
  /** Nodes of the search for whole unknowns: a limit that gives the same answer on every machine. */
  readonly nodes?: number;
  /** How far from the best an answer in whole numbers may be, as a share of it; left out: not at all. */
  readonly gap?: number;
  /** A limit by the clock, as a last resort. */
  readonly seconds?: number;
}

/** Solves one model after another; each host gives the one it has loaded. None of its answers is believed unchecked. */
export interface Solver {
  (model: LinearModel, limits?: SolverLimits): LinearSolution;
  /** One model without whole unknowns, to be asked again and again; left out: each question is a model of its own. */
  readonly open?: (model: LinearModel) => OpenModel;
}

/** Each answer begins where the last one ended, which takes far less time than a model of its own. */
export interface OpenModel {
  /** @param upper - tighter upper ends for this question only, by column */
  readonly ask: (
    sense: LinearModel["sense"],
    weights: ReadonlyMap<number, number>,
    upper: ReadonlyMap<number, number>,
  ) => LinearSolution;
  readonly close: () => void;
}
