import fc from "fast-check";
import { type ChildCounts, standardisedChange } from "../../src/statistics/standardised-change";

/** 97.5th percentile of the standard normal distribution (any table). */
const Z = 1.959964;

const NOBODY = { count: 0, of: 0 };
const one = (stratum: number, date: "before" | "after", met: boolean): ChildCounts[] => [
  { stratum, before: NOBODY, after: NOBODY, [date]: { count: met ? 1 : 0, of: 1 } },
];
const group = (stratum: number, date: "before" | "after", count: number, of: number) =>
  Array.from({ length: of }, (_, at) => one(stratum, date, at < count));

describe("by hand", () => {
  test("other children on the second date, one check each: the sum of two binomial variances, times C / (C - 1)", () => {
    const children = [...group(0, "before", 6, 10), ...group(0, "after", 15, 20)];
    const half = Z * Math.sqrt((30 / 29) * (0.24 / 10 + 0.1875 / 20));
    const { change, lower, upper } = standardisedChange(children, [1], 0.95)!;
    expect(change).toBeCloseTo(0.15, 12);
    expect(lower).toBeCloseTo(0.15 - half, 6);
    expect(upper).toBeCloseTo(0.15 + half, 6);
  });

  test("two strata weighted 3 to 1: 0.75 (8/10 - 5/10) + 0.25 (2/10 - 4/10) = 0.175", () => {
    const children = [
      ...[...group(0, "before", 5, 10), ...group(0, "after", 8, 10)],
      ...[...group(1, "before", 4, 10), ...group(1, "after", 2, 10)],
    ];
    const variance = 0.5625 * (0.25 / 10 + 0.16 / 10) + 0.0625 * (0.24 / 10 + 0.16 / 10);
    const { change, upper } = standardisedChange(children, [3, 1], 0.95)!;
    expect(change).toBeCloseTo(0.175, 12);
    expect(upper).toBeCloseTo(0.175 + Z * Math.sqrt((40 / 39) * variance), 6);
  });

  test("the same children with the same results on both dates: no change, and none in doubt", () => {
    const stay = (met: number): ChildCounts[] => [
      { stratum: 0, before: { count: met, of: 1 }, after: { count: met, of: 1 } },
    ];
    expect(standardisedChange([stay(1), stay(0), stay(1)], [1], 0.95)).toEqual({ change: 0, lower: 0, upper: 0 });
  });

  test("ten checks of a child that all go together count as one child, not as ten", () => {
    const tenfold = (children: ChildCounts[][]) =>
      children.map((own) =>
        own.map(({ stratum, before, after }) => ({
          stratum,
          before: { count: 10 * before.count, of: 10 * before.of },
          after: { count: 10 * after.count, of: 10 * after.of },
        })),
      );
    const children = [...group(0, "before", 3, 10), ...group(0, "after", 5, 10)];
    const [single, ten] = [children, tenfold(children)].map((each) => standardisedChange(each, [1], 0.95)!);
    expect(ten!.lower).toBeCloseTo(single!.lower, 12);
    expect(ten!.upper).toBeCloseTo(single!.upper, 12);
  });
});

test("nothing where a stratum with weight has nobody on one date, or there is one child", () => {
  expect(standardisedChange([...group(0, "before", 1, 2), ...group(1, "after", 1, 2)], [1, 1], 0.95)).toBeNull();
  expect(standardisedChange([one(0, "before", true)], [1], 0.95)).toBeNull();
});

test("the order of the children changes nothing", () => {
  const drawn = fc.array(fc.tuple(fc.nat(1), fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(drawn, (rows) => {
      const children = rows.map(([stratum, isLater, met]) => one(stratum, isLater ? "after" : "before", met));
      expect(standardisedChange([...children].reverse(), [2, 1], 0.95)).toEqual(
        standardisedChange(children, [2, 1], 0.95),
      );
    }),
  );
});
