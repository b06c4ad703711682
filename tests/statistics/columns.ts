import type { Npmle } from "../../src/statistics/npmle";

/** One row a distinct interval and its count, as one row a child. */
export function oneRowAChild(after: readonly number[], by: readonly number[], count: readonly number[]) {
  const rows = (ages: readonly number[]) =>
    Float64Array.from(ages.flatMap((age, index) => Array<number>(count[index]!).fill(age)));
  return { after: rows(after), by: rows(by) };
}

/** Time and met (1) or not (0) as an exact age or one that is only known to be later. */
export function exactOrLater(time: readonly number[], met: readonly number[]) {
  return {
    after: Float64Array.from(time),
    by: Float64Array.from(time, (age, index) => (met[index] === 1 ? age : Infinity)),
  };
}

/** The rows of an estimate that hold mass. */
export function rowsWithMass(estimate: Npmle) {
  return Array.from(estimate.mass, (mass, index) => ({
    from: estimate.from[index]!,
    to: estimate.to[index]!,
    mass,
    shareTo: estimate.shareTo[index]!,
  })).filter((row) => row.mass > 1e-9);
}
