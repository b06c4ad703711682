import { WHO_WINDOWS } from "../published/skill-ages";
import { answerOf, cellOf, column, rowsOf } from "./call";

/**
 * The study gives percentiles, not a rule for the edges themselves. Here the window is half-open: at the very age at
 * which it closes it is past, where a reading with both limits in would still be in it. The tests keep a tenth of a
 * month away from the closing, and the edge has a test of its own.
 */
const windows = Object.entries(WHO_WINDOWS).map(([skill, [opens, closes]]) => [skill, opens, closes] as const);

test.each(windows)("%s: before %d, in, past %d", (_skill, opens, closes) => {
  const ages = [opens - 0.1, opens, (opens + closes) / 2, closes - 0.1, closes + 0.1];
  expect(rowsOf("WINDOWSTATUS", column(ages), opens, closes).flat()).toEqual([
    "before window",
    "in window",
    "in window",
    "in window",
    "past window",
  ]);
});

test.each(windows)("%s: a window is half-open, so that at the closing age it is past", (_skill, opens, closes) => {
  expect(cellOf("WINDOWSTATUS", closes, opens, closes)).toBe("past window");
});

describe("by hand, a window of 6 to 9 months at 12 months of age", () => {
  test.each([
    [5.9, null, "met early"],
    [6, null, "met in window"],
    [8.9, null, "met in window"],
    [9, null, "met late"],
    [5.9, 2, "met early"],
    [8, 6, "met in window"],
    [8, 5, "met, timing not known"],
    [10, 8, "met, timing not known"],
    [10, 9, "met late"],
    [7, 0, "met, timing not known"],
    [7, 7, "met in window"],
  ])("seen at %d, not yet at %j: %s", (met, notMet, expected) => {
    expect(cellOf("WINDOWSTATUS", 12, 6, 9, met, notMet)).toBe(expected);
  });

  test("met at 0 months is met", () => {
    expect(cellOf("WINDOWSTATUS", 3, 1, 9, 0)).toBe("met early");
    expect(cellOf("WINDOWSTATUS", 3, 0, 9, 0)).toBe("met in window");
  });

  test.each([null, ""])("not met (%j) is told by the age", (empty) => {
    expect(cellOf("WINDOWSTATUS", 12, 6, 9, empty, empty)).toBe("past window");
    expect(cellOf("WINDOWSTATUS", 12, 6, 9, empty, 11)).toBe("past window");
  });
});

test("where no opening is published nothing is before the window, or early; without any window nothing is said", () => {
  expect(cellOf("WINDOWSTATUS", 1, null, 9)).toBe("in window");
  expect(cellOf("WINDOWSTATUS", 12, null, 9, 1)).toBe("met in window");
  expect(cellOf("WINDOWSTATUS", 12, null, null)).toBeNull();
  expect(cellOf("WINDOWSTATUS", -0.5, 0, 9)).toBe("before window");
});

test("seen at the very age that is asked about is no mistake, nor is an age left out", () => {
  expect(cellOf("WINDOWSTATUS", 7, 6, 9, 7)).toBe("met in window");
  for (const empty of [null, "", 0]) expect(cellOf("WINDOWSTATUS", empty, 6, 9, 7)).toBe("met in window");
});

test("a row without an age is blank, and so is a row of zeros", () => {
  expect(rowsOf("WINDOWSTATUS", column([5, null, ""]), 6, 9).flat()).toEqual(["before window", null, null]);
  expect(rowsOf("WINDOWSTATUS", column([5, 0]), column([6, 0]), column([9, 0])).flat()).toEqual([
    "before window",
    null,
  ]);
});

test.each([
  [["five", 6, 9], "months is not a number: type it with digits alone."],
  [[5, 9, 6], "closes must come after opens: correct one of the two."],
  [[5, 6, 6], "closes must come after opens: correct one of the two."],
  [[7, 6, 9, 7.5], "metMonths is above months: the skill cannot have been seen after the age that is asked about."],
  [[12, 6, 9, 7, 8], "notMetMonths is above metMonths: give the last age without the skill before it was seen."],
])("WINDOWSTATUS(%j) is refused", (args, message) => {
  expect(answerOf("WINDOWSTATUS", ...args)).toEqual({ error: "#VALUE!", message });
});
