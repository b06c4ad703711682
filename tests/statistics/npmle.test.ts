import fc from "fast-check";
import { npmle } from "../../src/statistics/npmle";
import { finkelsteinWolfe1985 } from "../published/finkelstein-wolfe-1985";
import { invented200, invented5000 } from "../published/npsurv-invented";
import { turnbull1974 } from "../published/turnbull-1974";
import { turnbullWeiss1978 } from "../published/turnbull-weiss-1978";
import { exactOrLater, oneRowAChild, rowsWithMass } from "./columns";

const columns = (after: readonly number[], by: readonly number[]) =>
  [Float64Array.from(after), Float64Array.from(by)] as const;

describe("published", () => {
  const examples = [
    ["Turnbull (1974)", turnbull1974],
    ["Turnbull & Weiss (1978)", turnbullWeiss1978],
    [
      "Finkelstein & Wolfe (1985)",
      { ...finkelsteinWolfe1985.radiotherapy, count: null, ...massOf(finkelsteinWolfe1985) },
    ],
    ["200 invented children, npsurv", invented200],
    ["5,000 invented children, npsurv", invented5000],
  ] as const;

  test.each(examples)("%s: innermost intervals, masses and log-likelihood", (_, example) => {
    const [after, by] = columns(example.after, example.by);
    const options = example.count === null ? {} : { weights: Float64Array.from(example.count) };
    const estimate = npmle(after, by, options);
    const rows = rowsWithMass(estimate);
    expect(estimate.largestGradient).toBeLessThanOrEqual(1e-9);
    expect(rows.map((row) => row.from)).toEqual(example.from);
    expect(rows.map((row) => row.to)).toEqual(example.to);
    rows.forEach((row, index) => expect(row.mass).toBeCloseTo(example.mass[index]!, 9));
    expect(estimate.logLikelihood).toBeCloseTo(example.logLikelihood, 7);
  });

  test("Turnbull (1974): the shares surviving, as printed", () => {
    const rows = rowsWithMass(
      npmle(...columns(turnbull1974.after, turnbull1974.by), { weights: Float64Array.from(turnbull1974.count) }),
    );
    turnbull1974.printed.surviving.forEach((share, index) => expect(1 - rows[index]!.shareTo).toBeCloseTo(share, 3));
  });

  test("Turnbull & Weiss (1978): the shares surviving, as printed (memory)", () => {
    const { after, by, count, printed } = turnbullWeiss1978;
    const rows = rowsWithMass(npmle(...columns(after, by), { weights: Float64Array.from(count) }));
    printed.surviving.forEach((share, index) => expect(1 - rows[index]!.shareTo).toBeCloseTo(share, 3));
  });

  test("Finkelstein & Wolfe (1985): the masses and shares, as printed (memory)", () => {
    const { radiotherapy, printedMass, printedSurviving } = finkelsteinWolfe1985;
    const rows = rowsWithMass(npmle(...columns(radiotherapy.after, radiotherapy.by)));
    printedMass.forEach((mass, index) => expect(Math.abs(rows[index]!.mass - mass)).toBeLessThan(0.000051));
    printedSurviving.forEach((share, index) =>
      expect(Math.abs(1 - rows[index]!.shareTo - share)).toBeLessThan(0.00051),
    );
  });
});

describe("by hand", () => {
  test("(0, 2] and (1, 3] can both be met in (1, 2]", () => {
    expect(rowsWithMass(npmle(...columns([0, 1], [2, 3])))).toEqual([{ from: 1, to: 2, mass: 1, shareTo: 1 }]);
  });

  test("(0, 1], (0, 2] and (1, 2]: the likelihood p * 1 * (1 - p) is greatest at p = 1/2", () => {
    const rows = rowsWithMass(npmle(...columns([0, 0, 1], [1, 2, 2])));
    expect(rows.map((row) => [row.from, row.to])).toEqual([
      [0, 1],
      [1, 2],
    ]);
    expect(rows[0]!.mass).toBeCloseTo(1 / 2, 10);
  });

  test("a day known exactly takes the mass of every interval that holds it", () => {
    const rows = rowsWithMass(npmle(...columns([4, 3, 0], [4, 4, 9])));
    expect(rows).toEqual([{ from: 4, to: 4, mass: 1, shareTo: 1 }]);
  });

  test("an interval starts after its first day: met on day 4 is not met in (4, 6]", () => {
    const rows = rowsWithMass(npmle(...columns([4, 4], [4, 6])));
    expect(rows.map((row) => [row.from, row.to, row.mass])).toEqual([
      [4, 4, expect.closeTo(1 / 2, 10)],
      [4, 6, expect.closeTo(1 / 2, 10)],
    ]);
  });

  test("never seen by day 5 and never seen by day 8: all mass after day 8", () => {
    expect(rowsWithMass(npmle(...columns([5, 8], [Infinity, Infinity])))).toEqual([
      { from: 8, to: Infinity, mass: 1, shareTo: 1 },
    ]);
  });

  test("exact ages 1, 2 and one child left at 1: the Kaplan-Meier shares 1/3 and 2/3", () => {
    const { after, by } = exactOrLater([1, 1, 2], [1, 0, 1]);
    const rows = rowsWithMass(npmle(after, by));
    expect(rows.map((row) => row.mass)).toEqual([expect.closeTo(1 / 3, 10), expect.closeTo(2 / 3, 10)]);
  });

  test("ages before the day the baby was due are negative", () => {
    expect(rowsWithMass(npmle(...columns([-60, -20], [10, 5])))).toEqual([{ from: -20, to: 5, mass: 1, shareTo: 1 }]);
  });
});

describe("property", () => {
  const child = fc.record({
    after: fc.integer({ min: -20, max: 40 }),
    length: fc.oneof(fc.integer({ min: 0, max: 25 }), fc.constant(Infinity)),
  });
  const children = fc.array(child, { minLength: 1, maxLength: 40 });
  const toColumns = (rows: readonly { after: number; length: number }[]) =>
    columns(
      rows.map((row) => row.after),
      rows.map((row) => row.after + row.length),
    );

  test("the optimum holds: no gradient above n, and n wherever there is mass, by plain sums over the children", () => {
    fc.assert(
      fc.property(children, (rows) => {
        const [after, by] = toColumns(rows);
        const estimate = npmle(after, by);
        const covers = (row: number, cell: number) =>
          estimate.to[cell]! <= by[row]! &&
          (after[row] === by[row]
            ? estimate.from[cell] === after[row]
            : estimate.from[cell]! >= after[row]! &&
              !(estimate.from[cell] === after[row] && estimate.to[cell] === after[row]));
        const cells = [...estimate.mass.keys()];
        const shareOf = [...after.keys()].map((row) =>
          cells.reduce((sum, cell) => sum + (covers(row, cell) ? estimate.mass[cell]! : 0), 0),
        );
        for (const cell of cells) {
          const gradient = shareOf.reduce((sum, share, row) => sum + (covers(row, cell) ? 1 / share : 0), 0);
          expect(gradient).toBeLessThanOrEqual(rows.length + 1e-7);
          if (estimate.mass[cell]! > 1e-6) expect(gradient).toBeCloseTo(rows.length, 3);
        }
        expect(estimate.mass.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(1, 12);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  test("the order of the children does not matter, and doubling every child changes nothing", () => {
    fc.assert(
      fc.property(children, (rows) => {
        const plain = npmle(...toColumns(rows));
        const turned = npmle(...toColumns([...rows].reverse()));
        const doubled = npmle(...toColumns([...rows, ...rows]));
        expect(turned.mass).toEqual(plain.mass);
        expect(doubled.from).toEqual(plain.from);
        expect(doubled.logLikelihood).toBeCloseTo(2 * plain.logLikelihood, 7);
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  test("shifting every age shifts the estimate", () => {
    fc.assert(
      fc.property(children, fc.integer({ min: -500, max: 500 }), (rows, shift) => {
        const plain = npmle(...toColumns(rows));
        const later = npmle(...toColumns(rows.map((row) => ({ ...row, after: row.after + shift }))));
        expect(later.mass).toEqual(plain.mass);
        expect(later.from).toEqual(plain.from.map((age) => age + shift));
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test("weights stand for rows", () => {
    const { after, by } = oneRowAChild(invented200.after, invented200.by, invented200.count);
    const weighted = npmle(...columns(invented200.after, invented200.by), {
      weights: Float64Array.from(invented200.count),
    });
    expect(npmle(after, by)).toEqual(weighted);
  });
});

describe("refusal", () => {
  test.each([
    ["no child", [], []],
    ["columns of different length", [1, 2], [3]],
    ["an interval that ends before it starts", [5], [4]],
    ["a start that is not a number", [NaN], [4]],
    ["a start that is infinite", [-Infinity], [4]],
    ["an end that is not a number", [1], [NaN]],
  ])("%s", (_, after, by) => {
    expect(() => npmle(...columns(after, by))).toThrow(RangeError);
  });

  test.each([[[1]], [[1, 0]], [[1, NaN]]])("weights %j for two children", (weights) => {
    expect(() => npmle(...columns([1, 2], [3, 4]), { weights: Float64Array.from(weights) })).toThrow(RangeError);
  });

  test("a run that may not go on says how far it is from the optimum", () => {
    const { after, by, count } = invented5000;
    const short = npmle(...columns(after, by), { weights: Float64Array.from(count), mostIterations: 2 });
    expect(short.iterations).toBe(2);
    expect(short.largestGradient).toBeGreaterThan(1e-9);
  });
});

function massOf({ from, to, mass, logLikelihood }: typeof finkelsteinWolfe1985) {
  return { from, to, mass, logLikelihood };
}
