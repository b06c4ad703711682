import fc from "fast-check";
import { type CategoryCounts, summaryStatements } from "../../src/statistics/summary-statements";
import { summaryStatements2009 } from "../published/rating-to-category";

type Five = readonly [number, number, number, number, number];
const countsOf = ([a, b, c, d, e]: Five, aOrB = 0): CategoryCounts => ({ a, b, aOrB, c, d, e });

/** The categories are printed rounded, so that the statements agree to about a point and a half. */
test.each(summaryStatements2009)("published: $categories percent give about $printed", ({ categories, printed }) => {
  const [first, second] = summaryStatements(countsOf(categories as unknown as Five));
  expect(Math.abs(first.percent! - printed[0]!)).toBeLessThan(1.5);
  expect(Math.abs(second.percent! - printed[1]!)).toBeLessThan(1.5);
});

test("by hand: 1, 2, 3, 4, 5 give 7 of 10 and 9 of 15", () => {
  expect(summaryStatements(countsOf([1, 2, 3, 4, 5]))).toEqual([
    { statement: 1, count: 7, of: 10, percent: 70 },
    { statement: 2, count: 9, of: 15, percent: 60 },
  ]);
});

test("by hand: 5 children of whom it is open whether they are a or b: 7 of 15 and 9 of 20", () => {
  expect(summaryStatements(countsOf([1, 2, 3, 4, 5], 5)).map(({ count, of }) => [count, of])).toEqual([
    [7, 15],
    [9, 20],
  ]);
});

test("nobody below the level of their peers at entry: statement 1 has no percent, statement 2 is 100", () => {
  expect(summaryStatements(countsOf([0, 0, 0, 0, 3])).map(({ percent }) => percent)).toEqual([null, 100]);
});

test("property: every child twice changes no percent", () => {
  const count = fc.nat(50);
  fc.assert(
    fc.property(fc.tuple(count, count, count, count, count), (counts) => {
      const twice = counts.map((each) => 2 * each) as unknown as Five;
      expect(summaryStatements(countsOf(twice)).map(({ percent }) => percent)).toEqual(
        summaryStatements(countsOf(counts)).map(({ percent }) => percent),
      );
    }),
  );
});

test.each([[[-1, 0, 0, 0, 0]], [[0.5, 0, 0, 0, 0]]] as const)("%j is refused", (counts) => {
  expect(() => summaryStatements(countsOf(counts as unknown as Five))).toThrow(RangeError);
});
