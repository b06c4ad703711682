import fc from "fast-check";
import { randomFrom } from "../../src/statistics/random";
import { scan, type ScanInput, type ScanStratum } from "../../src/statistics/scan";
import { AliasTable } from "../../src/statistics/scan-alias";
import { scanInvented } from "../published/scan-invented";

const OPTIONS = { maxWidth: 6, replicates: 999, seed: 20240229 };

/** One layer, one stratum: counts against a population. */
function inputOf(counts: readonly (readonly number[])[], population: readonly (readonly number[])[]): ScanInput {
  const observed = Int32Array.from(counts.flat());
  const draws = observed.reduce((sum, count) => sum + count, 0);
  return {
    shape: { layers: 1, places: counts.length, periods: counts[0]?.length ?? 0 },
    observed,
    strata: [{ draws, weights: Float64Array.from(population.flat()), layers: [0] }],
  };
}

describe("invented counts worked out in R", () => {
  const { windows, windowCount } = scan(inputOf(scanInvented.counts, scanInvented.population), {
    ...OPTIONS,
    replicates: 1999,
  });

  test("the ten most likely windows, all of place 3", () => {
    const { first, last, observed, expected, ratio } = scanInvented.top;
    const places = windows.slice(0, 10).map(({ place }) => place + 1);
    expect(places).toEqual(Array(10).fill(3));
    expect(windows.slice(0, 10).map((window) => window.first + 1)).toEqual(first);
    expect(windows.slice(0, 10).map((window) => window.last + 1)).toEqual(last);
    expect(windows.slice(0, 10).map((window) => window.observed)).toEqual(observed);
    windows.slice(0, 10).forEach((window, at) => {
      expect(window.expected).toBeCloseTo(expected[at]!, 10);
      expect(window.logLikelihoodRatio).toBeCloseTo(ratio[at]!, 8);
    });
    expect(windowCount).toBe(scanInvented.windowCount);
  });

  test("none of 1,999 replicates reaches the cluster put in; 5% reach 6.1, by chance within 0.35", () => {
    expect(windows[0]?.p).toBe(scanInvented.p);
    const notable = windows.filter(({ p }) => p <= 0.05).at(-1);
    expect(Math.abs(notable!.logLikelihoodRatio - scanInvented.critical)).toBeLessThan(1);
    const first = windows.find(({ logLikelihoodRatio }) => logLikelihoodRatio <= scanInvented.critical + 0.35);
    expect(first!.p).toBeGreaterThan(0.03);
  });
});

describe("by hand", () => {
  test("3 of 4 in one of two equal places: 3 ln(3/2) + 1 ln(1/2)", () => {
    const { windows } = scan(inputOf([[3], [1]], [[5], [5]]), { ...OPTIONS, maxWidth: 1 });
    expect(windows).toHaveLength(1);
    expect(windows[0]).toMatchObject({ place: 0, first: 0, last: 0, observed: 3, expected: 2 });
    expect(windows[0]?.logLikelihoodRatio).toBeCloseTo(3 * Math.log(1.5) + Math.log(0.5), 12);
  });

  test("the same: p is the chance of 3 to 1 or more either way, 10 of 16 throws, as near as 99,999 replicates tell", () => {
    const { windows } = scan(inputOf([[3], [1]], [[5], [5]]), { maxWidth: 1, replicates: 99_999, seed: 3 });
    expect(windows[0]?.p).toBeCloseTo(10 / 16, 2);
  });

  test("all events in one cell: C ln(C / e), nothing outside", () => {
    const { windows } = scan(inputOf([[4, 0]], [[1, 1]]), { ...OPTIONS, maxWidth: 1 });
    expect(windows[0]?.logLikelihoodRatio).toBeCloseTo(4 * Math.log(2), 12);
  });

  test("nothing observed gives no window", () => {
    expect(scan(inputOf([[0, 0]], [[1, 2]]), OPTIONS).windows).toEqual([]);
  });
});

describe("property", () => {
  const grid = fc
    .record({ places: fc.integer({ min: 1, max: 4 }), periods: fc.integer({ min: 1, max: 6 }) })
    .chain(({ places, periods }) =>
      fc.record({
        counts: fc.array(fc.array(fc.nat(6), { minLength: periods, maxLength: periods }), {
          minLength: places,
          maxLength: places,
        }),
        population: fc.array(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: periods, maxLength: periods }), {
          minLength: places,
          maxLength: places,
        }),
      }),
    );

  test("agrees with every window worked out one by one", () => {
    fc.assert(
      fc.property(grid, ({ counts, population }) => {
        const ours = scan(inputOf(counts, population), { maxWidth: 3, replicates: 1, seed: 1 }).windows;
        const theirs = naive(counts, population, 3);
        expect(ours.map(({ logLikelihoodRatio }) => logLikelihoodRatio)).toEqual(
          theirs.map((ratio) => expect.closeTo(ratio, 9)),
        );
      }),
      { numRuns: 200 },
    );
  });

  test("a larger ratio never has a larger p, and the same seed gives the same p", () => {
    fc.assert(
      fc.property(grid, ({ counts, population }) => {
        const run = () => scan(inputOf(counts, population), { maxWidth: 3, replicates: 99, seed: 7 }).windows;
        const p = run().map((window) => window.p);
        expect([...p].sort((a, b) => a - b)).toEqual(p);
        expect(run()).toEqual(run());
        p.forEach((each) => expect(each).toBeGreaterThanOrEqual(1 / 100));
      }),
      { numRuns: 40 },
    );
  });

  test("layers: each counts what its strata throw, and its own total stands in its ratio", () => {
    const weights = Float64Array.of(1, 1, 1, 1);
    const strata: ScanStratum[] = [
      { draws: 3, weights, layers: [0, 1] },
      { draws: 5, weights, layers: [0] },
    ];
    const observed = Int32Array.of(2, 2, 2, 2, 3, 0, 0, 0);
    const shape = { layers: 2, places: 2, periods: 2 };
    const { windows } = scan({ shape, observed, strata }, { maxWidth: 1, replicates: 99, seed: 1 });
    expect(windows).toHaveLength(1);
    expect(windows[0]).toMatchObject({ layer: 1, place: 0, first: 0, observed: 3, expected: 0.75 });
    expect(windows[0]?.logLikelihoodRatio).toBeCloseTo(3 * Math.log(4), 12);
  });
});

/** Chi-squared quantile: qchisq(0.9999, 4) = 23.51, R 4.2.2. */
test("the alias table draws in proportion to the weights, and never a weight of 0", () => {
  const weights = Float64Array.of(1, 0, 5, 0.5, 3, 2.5);
  const table = new AliasTable(weights);
  const random = randomFrom(11);
  const counts = new Float64Array(weights.length);
  for (let draw = 0; draw < 120_000; draw += 1) counts[table.draw(random.nextUnit())]! += 1;
  const distance = counts.reduce((sum, count, cell) => {
    const expected = weights[cell]! * 10_000;
    return expected === 0 ? sum : sum + (count - expected) ** 2 / expected;
  }, 0);
  expect(distance).toBeLessThan(23.51);
  expect(counts[1]).toBe(0);
});

describe("refusal", () => {
  const good = inputOf([[1, 2]], [[1, 1]]);

  test.each<[string, Partial<ScanInput>, Partial<typeof OPTIONS>]>([
    ["a width of 0", {}, { maxWidth: 0 }],
    ["no replicates", {}, { replicates: 0 }],
    ["too few counts", { observed: Int32Array.of(3) }, {}],
    ["other counts than the strata hold", { observed: Int32Array.of(1, 1) }, {}],
    ["a negative count", { observed: Int32Array.of(-1, 4) }, {}],
    [
      "something where nothing is expected",
      { strata: [{ draws: 3, weights: Float64Array.of(0, 1), layers: [0] }] },
      {},
    ],
    ["weights below 0", { strata: [{ draws: 3, weights: Float64Array.of(1, -1), layers: [0] }] }, {}],
  ])("%s", (_, input, options) => {
    expect(() => scan({ ...good, ...input }, { ...OPTIONS, ...options })).toThrow(RangeError);
  });
});

function naive(
  counts: readonly (readonly number[])[],
  population: readonly (readonly number[])[],
  maxWidth: number,
): number[] {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const [all, people] = [sum(counts.flat()), sum(population.flat())];
  const ratios: number[] = [];
  counts.forEach((row, place) =>
    row.forEach((_, first) => {
      for (let end = first + 1; end <= Math.min(row.length, first + maxWidth); end += 1) {
        const c = sum(row.slice(first, end));
        const e = (all * sum(population[place]!.slice(first, end))) / people;
        const term = (seen: number, wanted: number) => (seen === 0 ? 0 : seen * Math.log(seen / wanted));
        if (c > e + 1e-9 * all) ratios.push(term(c, e) + term(all - c, all - e));
      }
    }),
  );
  return ratios.sort((a, b) => b - a);
}
