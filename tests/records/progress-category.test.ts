import { progressCategory } from "../../src/records/services/progress-category";
import { ratingToCategory } from "../published/rating-to-category";

const RATINGS = [1, 2, 3, 4, 5, 6, 7];

describe.each([
  ["with a new skill", true, ratingToCategory.withNewSkills],
  ["without a new skill", false, ratingToCategory.withoutNewSkills],
] as const)("%s", (_, isNew, rows) => {
  test.each(RATINGS)("exit rating %i, every entry rating", (exit) => {
    expect(RATINGS.map((entry) => progressCategory(entry, exit, isNew)).join("")).toBe(rows[exit - 1]);
  });
});

test("not known whether a skill is new: null exactly where the answer matters", () => {
  for (const entry of RATINGS) {
    for (const exit of RATINGS) {
      const [yes, no] = [progressCategory(entry, exit, true), progressCategory(entry, exit, false)];
      expect(progressCategory(entry, exit, null)).toBe(yes === no ? yes : null);
    }
  }
});

test.each([0, 8, 2.5, NaN])("a rating of %d is refused", (rating) => {
  expect(() => progressCategory(rating, 3, true)).toThrow(RangeError);
  expect(() => progressCategory(3, rating, true)).toThrow(RangeError);
});
