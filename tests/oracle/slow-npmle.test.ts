import * as fc from "fast-check";
import { percentile, shareBy, slowNpmle, type AgeInterval } from "./slow-npmle";
import { firstAgeWith, shareMetBy, slowKaplanMeier } from "./slow-kaplan-meier";

const interval = (after: number, by: number | null): AgeInterval => ({ after, by });
const times = (n: number, each: AgeInterval): AgeInterval[] => Array.from({ length: n }, () => each);
const held = (ages: readonly AgeInterval[]) => slowNpmle(ages).pieces.filter((piece) => piece.mass > 1e-9);

/**
 * Early breast cancer, radiotherapy arm, months to retraction, n = 46. Finkelstein and Wolfe (1985), Biometrics 41:933-945,
 * table 4. Masses as printed by Fay and Shaw (2010), J Stat Softw 36(2); those from memory.
 */
const COSMESIS_LEFT = [0, 0, 0, 4, 5, 5, 6, 7, 7, 11, 11, 17, 17, 18, 19, 25, 26, 27, 36, 36, 37];
const COSMESIS_RIGHT = [5, 7, 8, 11, 11, 12, 10, 14, 16, 15, 18, 25, 25, 26, 35, 37, 40, 34, 44, 48, 44];
const COSMESIS_CENSORED = [
  15, 17, 18, 22, 24, 24, 32, 33, 34, 36, 36, 37, 37, 37, 38, 40, 45, 46, 46, 46, 46, 46, 46, 46, 46,
];
const COSMESIS_MASSES = [
  [4, 5, 0.0463],
  [6, 7, 0.0334],
  [7, 8, 0.0887],
  [11, 12, 0.0708],
  [24, 25, 0.0926],
  [33, 34, 0.0818],
  [38, 40, 0.1209],
  [46, 48, 0.4656],
] as const;

test("cosmesis, radiotherapy arm", () => {
  const ages = [
    ...COSMESIS_LEFT.map((left, i) => interval(left, COSMESIS_RIGHT[i] ?? null)),
    ...COSMESIS_CENSORED.map((left) => interval(left, null)),
  ];
  expect(ages).toHaveLength(46);
  const pieces = held(ages);
  expect(pieces.map(({ from, to }) => [from, to])).toEqual(COSMESIS_MASSES.map(([from, to]) => [from, to]));
  pieces.forEach((piece, i) => expect(piece.mass).toBeCloseTo(COSMESIS_MASSES[i]?.[2] ?? NaN, 4));
});

/**
 * Doubly censored example, n = 44. Turnbull (1974), J Am Stat Assoc 69:169-173: survival 0.538, 0.295, 0.210, 0.095 after
 * 1 to 4, as quoted by R survival's test file turnbull.R.
 */
test("Turnbull's example: exact days, and looks that end on the same days", () => {
  const exact = [12, 6, 2, 3].flatMap((n, i) => times(n, interval(i + 1, i + 1)));
  const right = [3, 2, 0, 3].flatMap((n, i) => times(n, interval(i + 1, null)));
  const left = [2, 4, 2, 5].flatMap((n, i) => times(n, interval(0, i + 1)));
  const ages = [...exact, ...right, ...left];
  expect(ages).toHaveLength(44);
  const pieces = held(ages);
  expect(pieces.map(({ from, to }) => [from, to])).toEqual([
    [1, 1],
    [2, 2],
    [3, 3],
    [4, 4],
    [4, Infinity],
  ]);
  let survival = 1;
  [0.538, 0.295, 0.21, 0.095].forEach((printed, i) => {
    survival -= pieces[i]?.mass ?? NaN;
    expect(survival).toBeCloseTo(printed, 3);
  });
});

describe("by hand", () => {
  test("two overlapping looks: all the mass is where both agree, spread evenly", () => {
    const estimate = slowNpmle([interval(0, 10), interval(5, 15)]);
    expect(estimate.pieces).toEqual([{ from: 5, to: 10, mass: 1 }]);
    expect(percentile(estimate, 0.5)).toBeCloseTo(7.5, 5);
    expect([shareBy(estimate, 5), shareBy(estimate, 6), shareBy(estimate, 10), shareBy(estimate, 11)]).toEqual([
      0, 0.2, 1, 1,
    ]);
  });

  test("(0, 10] and (10, 20] share no day; a child last seen without it on day 5 tells nothing between them", () => {
    const estimate = slowNpmle([interval(0, 10), interval(10, 20), interval(5, null)]);
    expect(estimate.pieces.map(({ from, to }) => [from, to])).toEqual([
      [5, 10],
      [10, 20],
    ]);
    estimate.pieces.forEach((piece) => expect(piece.mass).toBeCloseTo(0.5, 10));
  });

  test("half lies beyond the last look: no share there, and no 75th percentile", () => {
    const estimate = slowNpmle([interval(0, 10), interval(10, null)]);
    expect(shareBy(estimate, 10)).toBeCloseTo(0.5, 10);
    expect(shareBy(estimate, 10.5)).toBeNull();
    expect(percentile(estimate, 0.5)).toBeCloseTo(10, 5);
    expect(percentile(estimate, 0.75)).toBeNull();
  });

  test("6-mercaptopurine arm, weeks in remission: 18/21, then 16/17, 14/15, 11/12, 10/11, 6/7 and 5/6 of it", () => {
    // Freireich et al. (1963), Blood 21:699-716; values from memory.
    const ended = [6, 6, 6, 7, 10, 13, 16, 22, 23].map((age) => ({ age, met: true }));
    const censored = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((age) => ({ age, met: false }));
    const steps = slowKaplanMeier([...ended, ...censored]);
    expect(steps.map((step) => step.atRisk)).toEqual([21, 17, 15, 12, 11, 7, 6]);
    const without = [18 / 21, 16 / 17, 14 / 15, 11 / 12, 10 / 11, 6 / 7, 5 / 6];
    steps.forEach((step, i) =>
      expect(step.without).toBeCloseTo(
        without.slice(0, i + 1).reduce((a, b) => a * b),
        12,
      ),
    );
    expect(firstAgeWith(steps, 0.5)).toBe(23);
    // Standard error 0.076 at week 6 (Klein and Moeschberger, table 4.1; from memory).
    expect(Math.sqrt(steps[0]?.variance ?? NaN)).toBeCloseTo(0.076, 3);
  });

  test("a child who enters late is at risk only after that day", () => {
    const steps = slowKaplanMeier([
      { age: 5, met: true },
      { age: 9, met: true, entry: 5 },
      { age: 9, met: false, entry: 7 },
    ]);
    expect(steps).toMatchObject([
      { age: 5, atRisk: 1, without: 0 },
      { age: 9, atRisk: 2, met: 1 },
    ]);
  });
});

describe("always", () => {
  const ages = fc.array(
    fc
      .tuple(fc.nat({ max: 30 }), fc.option(fc.nat({ max: 12 }), { freq: 3 }))
      .map(([after, length]) => interval(after, length === null ? null : after + length)),
    { minLength: 1, maxLength: 25 },
  );

  test("masses are shares, and no gradient is above n", () => {
    fc.assert(
      fc.property(ages, (drawn) => {
        const { pieces, largestGradient } = slowNpmle(drawn);
        expect(pieces.reduce((sum, piece) => sum + piece.mass, 0)).toBeCloseTo(1, 8);
        expect(pieces.every((piece) => piece.mass >= 0)).toBe(true);
        expect(Math.abs(largestGradient)).toBeLessThan(1e-7);
      }),
      { seed: 20240229, numRuns: 500 },
    );
  });

  test("no other masses are more likely: a thousandth moved from any piece to any other gains nothing", () => {
    fc.assert(
      fc.property(ages, (drawn) => {
        const { pieces } = slowNpmle(drawn);
        const covers = (age: AgeInterval, from: number, to: number): boolean =>
          to <= (age.by ?? Infinity) &&
          (age.after === age.by ? from === to && to === age.by : age.after <= from && (from < to || age.after < from));
        const height = (masses: readonly number[]): number =>
          drawn.reduce(
            (sum, age) =>
              sum +
              Math.log(pieces.reduce((f, { from, to }, j) => f + (covers(age, from, to) ? (masses[j] ?? 0) : 0), 0)),
            0,
          );
        const masses = pieces.map((piece) => piece.mass);
        const top = height(masses);
        masses.forEach((mass, from) =>
          masses.forEach((_, to) => {
            const moved = [...masses];
            moved[from] = mass - Math.min(mass, 0.001);
            moved[to] = (moved[to] ?? 0) + Math.min(mass, 0.001);
            expect(height(moved)).toBeLessThanOrEqual(top + 1e-9);
          }),
        );
      }),
      { seed: 20240229, numRuns: 100 },
    );
  });

  test("with exact and right-censored ages alone it is the Kaplan-Meier estimate", () => {
    const exact = fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.boolean()), { minLength: 1, maxLength: 25 });
    fc.assert(
      fc.property(exact, (drawn) => {
        const estimate = slowNpmle(drawn.map(([age, met]) => interval(age, met ? age : null)));
        const steps = slowKaplanMeier(drawn.map(([age, met]) => ({ age, met })));
        for (const { age } of steps) expect(shareBy(estimate, age)).toBeCloseTo(shareMetBy(steps, age), 8);
        for (const p of [0.1, 0.25, 0.5, 0.75, 0.9]) expect(percentile(estimate, p)).toBe(firstAgeWith(steps, p));
      }),
      { seed: 20240229, numRuns: 300 },
    );
  });
});
