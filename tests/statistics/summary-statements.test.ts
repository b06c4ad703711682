import fc from "fast-check";
import { type CategoryCounts, summaryStatements } from "../../src/statistics/summary-statements";
import { summaryStatements2009 } from "../published/rating-to-category";

/** The categories are printed rounded, so that the statements agree to about a point and a half. */
test.each(summaryStatements2009)("published: $categories percent give about $printed", ({ categories, printed }) => {
  const [first, second] = summaryStatements(categories as unknown as CategoryCounts);
  expect(Math.abs(first.percent! - printed[0]!)).toBeLessThan(1.5);
  expect(Math.abs(second.percent! - printed[1]!)).toBeLessThan(1.5);
});

test("by hand: 1, 2, 3, 4, 5 give 7 of 10 and 9 of 15", () => {
  expect(summaryStatements([1, 2, 3, 4, 5])).toEqual([
    { statement: 1, count: 7, of: 10, percent: 70 },
    { statement: 2, count: 9, of: 15, percent: 60 },
  ]);
});

test("nobody below the level of their peers at entry: statement 1 has no percent, statement 2 is 100", () => {
  expect(summaryStatements([0, 0, 0, 0, 3]).map(({ percent }) => percent)).toEqual([null, 100]);
});

test("property: every child twice changes no percent", () => {
  const count = fc.nat(50);
  fc.assert(
    fc.property(fc.tuple(count, count, count, count, count), (counts) => {
      const twice = counts.map((each) => 2 * each) as unknown as CategoryCounts;
      expect(summaryStatements(twice).map(({ percent }) => percent)).toEqual(
        summaryStatements(counts).map(({ percent }) => percent),
      );
    }),
  );
});

test.each([[[-1, 0, 0, 0, 0]], [[0.5, 0, 0, 0, 0]]])("%j is refused", (counts) => {
  expect(() => summaryStatements(counts as unknown as CategoryCounts)).toThrow(RangeError);
});
