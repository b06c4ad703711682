import fc from "fast-check";
import { compareAges } from "../../src/statistics/compare-ages";
import { finkelsteinScores, intervalLogRank } from "../../src/statistics/interval-log-rank";
import { logRank } from "../../src/statistics/log-rank";
import { npmle } from "../../src/statistics/npmle";
import { quadraticForm } from "../../src/statistics/quadratic-form";
import { finkelsteinWolfe1985 } from "../published/finkelstein-wolfe-1985";
import { freireich1963 } from "../published/freireich-1963";
import { hyde1980 } from "../published/hyde-1980";
import { inventedDelayed, inventedSites } from "../published/survival-invented";
import { exactOrLater } from "./columns";

const columns = (after: readonly number[], by: readonly number[]) => ({
  after: Float64Array.from(after),
  by: Float64Array.from(by),
});
const bothArms = columns(
  [...finkelsteinWolfe1985.radiotherapy.after, ...finkelsteinWolfe1985.withChemotherapy.after],
  [...finkelsteinWolfe1985.radiotherapy.by, ...finkelsteinWolfe1985.withChemotherapy.by],
);
const arms = Array.from(bothArms.after, (_, row) => (row < 46 ? "radiotherapy" : "with chemotherapy"));

describe("published", () => {
  test("Freireich et al. (1963): 16.79 as printed (memory), and R's survdiff", () => {
    const { sixMp, placebo, printed, logRank: expected } = freireich1963;
    const { after, by } = exactOrLater([...sixMp.time, ...placebo.time], [...sixMp.met, ...placebo.met]);
    const found = compareAges(
      { after, by },
      Array.from(after, (_, row) => (row < 21 ? "6-MP" : "placebo")),
    );
    expect(found).toMatchObject({ method: "log-rank", degreesOfFreedom: 1, reason: null });
    expect(found.chiSquared).toBeCloseTo(printed.logRank, 2);
    expect(found.chiSquared).toBeCloseTo(expected.chiSquared, 10);
    expect(found.p).toBeCloseTo(expected.p, 12);
  });

  test("Hyde (1980): delayed entry, men and women", () => {
    const { after, by } = exactOrLater(hyde1980.exit, hyde1980.met);
    const found = compareAges({ after, by, entry: Float64Array.from(hyde1980.entry) }, hyde1980.gender);
    const men = found.groups.find(({ group }) => group === 1)!;
    expect(men.observed).toBe(hyde1980.logRank.observed[0]);
    expect(men.expected).toBeCloseTo(hyde1980.logRank.expected[0]!, 10);
    expect(found.chiSquared).toBeCloseTo(hyde1980.logRank.chiSquared, 10);
    expect(found.p).toBeCloseTo(hyde1980.logRank.p, 12);
  });

  test("invented children with delayed entry", () => {
    const { after, by } = exactOrLater(inventedDelayed.exit, inventedDelayed.met);
    const found = compareAges({ after, by, entry: Float64Array.from(inventedDelayed.entry) }, inventedDelayed.group);
    expect(found.chiSquared).toBeCloseTo(inventedDelayed.logRank.chiSquared, 10);
    expect(found.p).toBeCloseTo(inventedDelayed.logRank.p, 12);
  });

  test("invented children of five sites: R's survdiff with 4 degrees of freedom", () => {
    const { after, by } = exactOrLater(inventedSites.time, inventedSites.met);
    const found = compareAges({ after, by }, inventedSites.site);
    expect(found.degreesOfFreedom).toBe(inventedSites.logRank.degreesOfFreedom);
    expect(found.chiSquared).toBeCloseTo(inventedSites.logRank.chiSquared, 10);
    expect(found.p).toBeCloseTo(inventedSites.logRank.p, 12);
    const expected = [...found.groups].sort((a, b) => (a.group < b.group ? -1 : 1)).map((each) => each.expected);
    expect(expected).toEqual(inventedSites.logRank.expected.map((each) => expect.closeTo(each, 9)));
  });

  test("Finkelstein & Wolfe (1985): the scores and their permutation variance, from R", () => {
    const found = compareAges(bothArms, arms);
    const { comparison } = finkelsteinWolfe1985;
    expect(found).toMatchObject({ method: "log-rank (score form for intervals)", degreesOfFreedom: 1 });
    expect(found.chiSquared).toBeCloseTo(comparison.chiSquared, 7);
    expect(found.p).toBeCloseTo(comparison.p, 9);
    // five standard errors of 200,000 deals, and the chi-squared form is not exact for 94 rows
    expect(Math.abs(found.p! - comparison.pByDealing)).toBeLessThan(0.0015);
    const scores = finkelsteinScores(bothArms.after, bothArms.by);
    expect(scores.slice(46).reduce((sum, score) => sum + score, 0)).toBeCloseTo(comparison.scoreSum, 7);
  });

  test("Finkelstein & Wolfe (1985), rows dealt to three groups in turn: two degrees of freedom", () => {
    const found = compareAges(
      bothArms,
      Array.from(bothArms.after, (_, row) => row % 3),
    );
    expect(found.degreesOfFreedom).toBe(2);
    expect(found.chiSquared).toBeCloseTo(finkelsteinWolfe1985.comparison.thirds.chiSquared, 7);
    expect(found.p).toBeCloseTo(finkelsteinWolfe1985.comparison.thirds.p, 8);
  });
});

describe("by hand", () => {
  test("one meets it on day 1, the other on day 2: observed 1, expected 1/2, variance 1/4", () => {
    const { after, by } = exactOrLater([1, 2], [1, 1]);
    const found = compareAges({ after, by }, ["a", "b"]);
    expect(found.chiSquared).toBeCloseTo((1 - 1 / 2) ** 2 / (1 / 4), 12);
    expect(found.groups.map(({ observed, expected }) => [observed, expected])).toEqual([
      [1, 1 / 2],
      [1, 3 / 2],
    ]);
  });

  test("the permutation variance is that of all 20 ways to deal six children to two groups of three", () => {
    const after = [0, 10, 20, 15, 30, 0];
    const by = [10, 25, 40, Infinity, 50, 20];
    const scores = finkelsteinScores(Float64Array.from(after), Float64Array.from(by));
    const sums = deals(6, 3).map((chosen) => chosen.reduce((sum, child) => sum + scores[child]!, 0));
    const mean = sums.reduce((sum, each) => sum + each, 0) / sums.length;
    const variance = sums.reduce((sum, each) => sum + (each - mean) ** 2, 0) / sums.length;
    const found = intervalLogRank(Float64Array.from(after), Float64Array.from(by), ["a", "a", "a", "b", "b", "b"]);
    expect(sums).toHaveLength(20);
    expect(found.chiSquared).toBeCloseTo((scores[0]! + scores[1]! + scores[2]! - mean) ** 2 / variance, 10);
  });

  test("a score is the slope of the log-likelihood in the log of the hazard ratio", () => {
    const estimate = npmle(bothArms.after, bothArms.by);
    const scores = finkelsteinScores(bothArms.after, bothArms.by);
    const upTo = (age: number) =>
      estimate.mass.reduce((sum, mass, cell) => sum + (estimate.to[cell]! <= age ? mass : 0), 0);
    const logLikelihood = (row: number, logRatio: number) => {
      const power = Math.exp(logRatio);
      const start = (1 - upTo(bothArms.after[row]!)) ** power;
      const end = bothArms.by[row] === Infinity ? 0 : (1 - upTo(bothArms.by[row]!)) ** power;
      return Math.log(start - end);
    };
    const step = 1e-5;
    scores.forEach((score, row) => {
      expect((logLikelihood(row, step) - logLikelihood(row, -step)) / (2 * step)).toBeCloseTo(score, 6);
    });
  });

  test("a quadratic form of a singular matrix leaves out what has no variance", () => {
    expect(
      quadraticForm(
        [1, -1],
        [
          [2, -2],
          [-2, 2],
        ],
      ),
    ).toEqual({ value: 1 / 2, rank: 1 });
    expect(
      quadraticForm(
        [3, 4, 0],
        [
          [9, 0, 0],
          [0, 4, 0],
          [0, 0, 0],
        ],
      ),
    ).toEqual({ value: 1 + 4, rank: 2 });
  });
});

describe("property", () => {
  const row = fc.record({
    after: fc.integer({ min: 0, max: 30 }),
    length: fc.oneof(fc.integer({ min: 0, max: 15 }), fc.constant(Infinity)),
    group: fc.integer({ min: 0, max: 2 }),
  });
  const toColumns = (rows: readonly { after: number; length: number }[]) =>
    columns(
      rows.map(({ after }) => after),
      rows.map(({ after, length }) => after + length),
    );

  test("row order and names of groups do not matter, and shifting every age does not", () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 3, maxLength: 40 }), (rows) => {
        const groups = rows.map(({ group }) => group);
        const found = compareAges(toColumns(rows), groups);
        const turned = [...rows].reverse();
        const others = [
          compareAges(
            toColumns(turned),
            turned.map(({ group }) => `site ${9 - group}`),
          ),
          compareAges(toColumns(rows.map((each) => ({ ...each, after: each.after + 100 }))), groups),
        ];
        for (const other of others) {
          expect(other.method).toBe(found.method);
          expect(other.degreesOfFreedom).toBe(found.degreesOfFreedom);
          if (found.chiSquared !== null) expect(other.chiSquared).toBeCloseTo(found.chiSquared, 5);
        }
      }),
      { seed: 23, numRuns: 200 },
    );
  });

  test("scores sum to 0: the estimate is at its optimum", () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 40 }), (rows) => {
        const { after, by } = toColumns(rows);
        expect(finkelsteinScores(after, by).reduce((sum, score) => sum + score, 0)).toBeCloseTo(0, 6);
      }),
      { seed: 24, numRuns: 200 },
    );
  });

  test("two groups with the very same children do not differ", () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 30 }), (rows) => {
        const found = compareAges(toColumns([...rows, ...rows]), [...rows.map(() => "a"), ...rows.map(() => "b")]);
        if (found.chiSquared !== null) expect(found.chiSquared).toBeCloseTo(0, 8);
      }),
      { seed: 25, numRuns: 100 },
    );
  });
});

describe("refusal", () => {
  test("columns of different length, an interval that ends before it starts, entries beside intervals", () => {
    expect(() => compareAges(columns([1, 2], [1]), ["a", "b"])).toThrow(RangeError);
    expect(() => compareAges(columns([1, 2], [1, 2]), ["a"])).toThrow(RangeError);
    expect(() => compareAges(columns([2, 2], [1, 3]), ["a", "b"])).toThrow(RangeError);
    expect(() => compareAges({ ...columns([1, 2], [3, 4]), entry: new Float64Array(2) }, ["a", "b"])).toThrow(
      RangeError,
    );
    expect(() => logRank({ ageDays: Float64Array.of(1), met: new Uint8Array(2) }, ["a"])).toThrow(RangeError);
  });

  test.each([
    ["one group", columns([1, 2], [1, 2]), ["a", "a"], "there is only one group"],
    ["one group, intervals", columns([1, 2], [3, 4]), ["a", "a"], "there is only one group"],
    ["nobody met it", columns([1, 2], [Infinity, Infinity]), ["a", "b"], "no child was seen with the skill"],
    ["all alike", columns([1, 1], [3, 3]), ["a", "b"], "the checks are the same for any two children"],
    [
      "never watched together",
      { ...columns([5, 20], [5, 20]), entry: Float64Array.of(0, 10) },
      ["a", "b"],
      "no age at which children of different groups could be compared",
    ],
  ])("%s is null with a reason", (_, ages, groups, reason) => {
    expect(compareAges(ages, groups)).toMatchObject({ chiSquared: null, degreesOfFreedom: null, p: null, reason });
  });
});

function deals(of: number, size: number, from = 0): number[][] {
  if (size === 0) return [[]];
  return Array.from({ length: of - from }, (_, index) => from + index).flatMap((child) =>
    deals(of, size - 1, child + 1).map((rest) => [child, ...rest]),
  );
}
