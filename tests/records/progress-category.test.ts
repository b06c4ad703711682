import fc from "fast-check";
import { progressCategory } from "../../src/records/services/progress-category";
import { ratingToCategory } from "../published/rating-to-category";

const RATINGS = [1, 2, 3, 4, 5, 6, 7];
/** The published conversion is of a scale of seven, on which 6 and 7 stand for children of the same age. */
const SEVEN = { levels: 7, peerLevel: 6 };
const FIVE = { levels: 5, peerLevel: 5 };

describe.each([
  ["with a skill gained", true, ratingToCategory.withNewSkills],
  ["without a skill gained", false, ratingToCategory.withoutNewSkills],
] as const)("published, %s", (_, gained, rows) => {
  test.each(RATINGS)("exit level %i, every entry level", (exit) => {
    expect(RATINGS.map((entry) => progressCategory(entry, exit, gained, SEVEN)).join("")).toBe(rows[exit - 1]);
  });
});

/** By hand, on a scale of five whose highest is that of children of the same age. */
test.each([
  [5, 5, false, "e"],
  [4, 5, true, "d"],
  [1, 5, true, "d"],
  [2, 3, true, "c"],
  [3, 4, false, "c"],
  [4, 4, false, "b"],
  [2, 2, null, "b"],
  [1, 1, true, "b"],
  [1, 1, false, "a"],
  [1, 1, null, "a or b"],
  [5, 3, true, "b"],
  [4, 3, false, "a"],
  [3, 1, null, "a or b"],
] as const)("five levels: %i to %i, gained %s: %s", (entry, exit, gained, category) => {
  expect(progressCategory(entry, exit, gained, FIVE)).toBe(category);
});

test("a scale of two: below or with children of the same age", () => {
  const two = (entry: number, exit: number) => progressCategory(entry, exit, null, { levels: 2, peerLevel: 2 });
  expect([two(1, 1), two(1, 2), two(2, 1), two(2, 2)]).toEqual(["a or b", "d", "a or b", "e"]);
});

const SCALES = fc
  .integer({ min: 2, max: 10 })
  .chain((levels) => fc.record({ levels: fc.constant(levels), peerLevel: fc.integer({ min: 2, max: levels }) }));
const ON_A_SCALE = SCALES.chain((scale) =>
  fc.record({
    scale: fc.constant(scale),
    entry: fc.integer({ min: 1, max: scale.levels }),
    exit: fc.integer({ min: 1, max: scale.levels }),
  }),
);

test("any scale: where it is not known whether a skill was gained, a or b exactly where the answer matters", () => {
  fc.assert(
    fc.property(ON_A_SCALE, ({ scale, entry, exit }) => {
      const [yes, no] = [true, false].map((gained) => progressCategory(entry, exit, gained, scale));
      expect(progressCategory(entry, exit, null, scale)).toBe(yes === no ? yes : "a or b");
    }),
  );
});

test("any scale: a higher exit level never gives an earlier letter", () => {
  fc.assert(
    fc.property(ON_A_SCALE, fc.boolean(), ({ scale, entry, exit }, gained) => {
      fc.pre(exit < scale.levels);
      const letters = [exit, exit + 1].map((level) => progressCategory(entry, level, gained, scale));
      expect([...letters].sort()).toEqual(letters);
    }),
  );
});

test.each([0, 8, 2.5, NaN])("a level of %d is refused", (level) => {
  expect(() => progressCategory(level, 3, true, SEVEN)).toThrow(RangeError);
  expect(() => progressCategory(3, level, true, SEVEN)).toThrow(RangeError);
});

test.each([1, 6])("on a scale of five, peers at level %d are refused", (peerLevel) => {
  expect(() => progressCategory(2, 3, true, { levels: 5, peerLevel })).toThrow(RangeError);
});
