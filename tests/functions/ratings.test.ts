import { ratingToCategory } from "../published/rating-to-category";
import { answerOf, cellOf, column, rowsOf } from "./call";

const RATINGS = [1, 2, 3, 4, 5, 6, 7];

describe("PROGRESSCATEGORY", () => {
  test.each([
    ["yes", true, ratingToCategory.withNewSkills],
    ["No", false, ratingToCategory.withoutNewSkills],
  ] as const)("all 49 combinations with %s, as columns", (word, isTrue, rows) => {
    RATINGS.forEach((exit, at) => {
      const wanted = column([...rows[at]!]);
      expect(rowsOf("PROGRESSCATEGORY", column(RATINGS), exit, word, 7, 6)).toEqual(wanted);
      const exits = column(RATINGS.map(() => exit));
      expect(rowsOf("PROGRESSCATEGORY", column(RATINGS), exits, isTrue, 7, 6)).toEqual(wanted);
    });
  });

  test.each([
    ["no answer, where it matters", [4, 3, null], "a or b"],
    ["an empty answer as 0", [4, 3, 0], "a or b"],
    ["five levels, the fifth that of peers, when left out", [4, 5, "yes"], "d"],
    ["left out as some hosts do", [4, 5, "yes", null, null], "d"],
    ["a scale of three with peers at the second", [1, 2, "yes", 3, 2], "d"],
    ["no answer, where it does not", [3, 3, null], "b"],
    ["no entry rating", [null, 3, "yes"], null],
    ["an exit rating handed over as 0", [3, 0, "yes"], null],
  ])("%s", (_, args, category) => expect(cellOf("PROGRESSCATEGORY", ...args)).toBe(category));

  test.each([
    [[8, 3, "yes"], "#NUM!"],
    [[6, 3, "yes"], "#NUM!"],
    [[2, 3, "yes", 11], "#NUM!"],
    [[2, 3, "yes", 3], "#NUM!"],
    [[2, 3, "yes", 5, 6], "#NUM!"],
    [[2, 3, "yes", 4.5], "#VALUE!"],
    [[3, -1, "yes"], "#NUM!"],
    [[2.5, 3, "yes"], "#VALUE!"],
    [["high", 3, "yes"], "#VALUE!"],
    [[3, 2, "perhaps"], "#VALUE!"],
  ])("%j is %s", (args, error) => expect(answerOf("PROGRESSCATEGORY", ...args)).toMatchObject({ error }));
});

describe("SUMMARYSTATEMENTS", () => {
  test("by hand: 1 a, 1 b, 2 c, 1 d, 3 e: 3 of 5 and 4 of 8; blanks are not counted", () => {
    const cells = column(["a", "B", "c", null, "c ", "d", "e", "e", "e", ""]);
    expect(rowsOf("SUMMARYSTATEMENTS", cells)).toEqual([
      [1, 3, 5, 60],
      [2, 4, 8, 50],
    ]);
  });

  test("a or b counts in both denominators: 2 of 4 and 1 of 4", () => {
    expect(rowsOf("SUMMARYSTATEMENTS", column(["a or b", "A or B", "c", "d"]))).toEqual([
      [1, 2, 4, 50],
      [2, 1, 4, 25],
    ]);
  });

  test("nobody to count leaves the percent blank", () => {
    expect(rowsOf("SUMMARYSTATEMENTS", column([null, null]))).toEqual([
      [1, 0, 0, null],
      [2, 0, 0, null],
    ]);
    expect(rowsOf("SUMMARYSTATEMENTS", "e")[0]).toEqual([1, 0, 0, null]);
  });

  test("a word that is no category is named with its row", () => {
    expect(answerOf("SUMMARYSTATEMENTS", column(["a", "f"]))).toEqual({
      error: "#VALUE!",
      message: "Row 2: a category is a, b, c, d, e or a or b.",
    });
  });
});
