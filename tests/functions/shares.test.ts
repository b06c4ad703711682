import { share } from "../../functions";
import { garwood1936 } from "../published/garwood-1936";
import { newcombe1998a } from "../published/newcombe-1998a";
import { newcombe1998b } from "../published/newcombe-1998b";
import { selvin2004 } from "../published/selvin-2004";
import { answerOf, column, rowsOf } from "./call";

const numbers = (row: readonly unknown[] | undefined) => row as readonly number[];

describe("published", () => {
  test.each(newcombe1998a)("Newcombe (1998), $count of $of, each method", ({ count, of, wilson, exact, midP }) => {
    const limits = ["wilson", "exact", "mid-p"].map((method) => numbers(rowsOf("SHARE", count, of, 0.95, method)[0]));
    [wilson, exact, midP].forEach(([lower, upper], at) => {
      expect(limits[at]?.[1]).toBeCloseTo(lower, 4);
      expect(limits[at]?.[2]).toBeCloseTo(upper, 4);
    });
  });

  test.each(newcombe1998b)("Newcombe (1998), difference $name", ({ counts, difference, computed }) => {
    const row = numbers(rowsOf("SHAREDIFFERENCE", ...counts)[0]);
    [difference, ...computed].forEach((value, at) => expect(row[at]).toBeCloseTo(value, 10));
  });

  test("Garwood (1936): with one expected the ratio's limits are those of the count", () => {
    const { count, lower, upper } = garwood1936.exact;
    const rows = rowsOf("OBSERVEDEXPECTED", column(count), 1);
    rows.forEach((row, at) => {
      expect(row[0]).toBe(count[at]);
      expect(row[1]).toBeCloseTo(lower[at] as number, 9);
      expect(row[2]).toBeCloseTo(upper[at] as number, 9);
    });
  });

  test("Selvin (2004): observed over expected with exact limits", () => {
    const row = numbers(rowsOf("OBSERVEDEXPECTED", selvin2004.observed, selvin2004.expected)[0]);
    [selvin2004.ratio, selvin2004.lower, selvin2004.upper].forEach((value, at) =>
      expect(row[at]).toBeCloseTo(value, 9),
    );
  });
});

describe("by hand", () => {
  test("p is twice the smaller tail, the observed counted in both: none where ln 4 is expected has 2 x 1/4", () => {
    expect(numbers(rowsOf("OBSERVEDEXPECTED", 0, Math.log(4))[0])[3]).toBeCloseTo(0.5, 12);
    expect(numbers(rowsOf("OBSERVEDEXPECTED", 1, 1)[0])[3]).toBe(1);
  });

  test("method and level left out are wilson and 0.95", () => {
    expect(rowsOf("SHARE", 15, 148)).toEqual(rowsOf("SHARE", 15, 148, 0.95, "wilson"));
    expect(rowsOf("SHARE", 15, 148, null, 0)).toEqual(rowsOf("SHARE", 15, 148, "", "Wilson"));
  });

  test("columns spill row by row; a single cell stands beside each; blank rows are blank and a bad row alone is bad", () => {
    const rows = rowsOf("SHARE", column([1, null, 3, 2.5, 0, "2"]), column([29, null, 2, 5, 0, 29]));
    expect(rows[0]).toEqual(rowsOf("SHARE", 1, 29)[0]);
    expect(rows[1]).toEqual([null, null, null]);
    expect(rows[2]).toEqual(Array(3).fill({ error: "#NUM!", message: "count is more than of: check both." }));
    expect(rows[3]).toEqual(Array(3).fill({ error: "#VALUE!", message: "count is a count: give a whole number." }));
    expect(rows[4]).toEqual([null, null, null]);
    expect(rows[5]).toEqual(rowsOf("SHARE", 2, 29)[0]);
    expect(rowsOf("SHARE", column([1, 2]), 29)).toEqual([rows[0], rows[5]]);
  });

  test("in a sheet a row is blank text, and what cannot be estimated #N/A", () => {
    const [, blank, nobody] = share(column([1, null, 0]), column([29, null, 0]));
    expect(blank).toEqual(["", "", ""]);
    expect(nobody).toEqual(Array(3).fill(expect.objectContaining({ code: "#N/A" })));
  });

  test("a count of 0 is a count", () => {
    expect(rowsOf("SHARE", 0, 20)[0]?.[0]).toBe(0);
    expect(rowsOf("OBSERVEDEXPECTED", 0, 2)[0]?.[0]).toBe(0);
  });
});

test.each([
  ["SHARE", [0, 0], "#N/A", "of is 0: there is nothing to take a share of."],
  ["SHARE", [3, 2], "#NUM!", "count is more than of: check both."],
  ["SHARE", [-1, 2], "#NUM!", "count is a count: it cannot be below 0."],
  ["SHARE", [1, null], "#VALUE!", "of is empty: give a number."],
  ["SHARE", ["some", 2], "#VALUE!", "count is not a number: type it with digits alone."],
  ["SHARE", [1, 2, 95], "#NUM!", "level lies between 0 and 1, such as 0.95."],
  ["SHARE", [1, 2, 0], "#NUM!", "level lies between 0 and 1, such as 0.95."],
  ["SHARE", [1, 2, 1], "#NUM!", "level lies between 0 and 1, such as 0.95."],
  ["SHARE", [1, 2, 0.9, "wald"], "#VALUE!", "method is one of: wilson, exact, mid-p."],
  ["SHARE", [[[1, 2]], 2], "#VALUE!", "count: give one column, not several."],
  ["SHAREDIFFERENCE", [1, 2, 0, 0], "#N/A", "of1 or of2 is 0: there is nothing to take a share of."],
  ["SHAREDIFFERENCE", [1, 2, 5, 4], "#NUM!", "count2 is more than of2: check both."],
  ["OBSERVEDEXPECTED", [3, 0], "#N/A", "expected is 0: there is nothing to compare with."],
  ["OBSERVEDEXPECTED", [3, -1], "#NUM!", "expected cannot be below 0."],
  ["OBSERVEDEXPECTED", [3.5, 1], "#VALUE!", "observed is a count: give a whole number."],
])("%s(%j) is %s", (name, args, error, message) => {
  expect(answerOf(name, ...args)).toEqual({ error, message });
});
