import fc from "fast-check";
import { benjaminiHochberg1995 } from "../published/benjamini-hochberg-1995";
import { answerOf, column, rowsOf } from "./call";

const { p, holm, bh } = benjaminiHochberg1995;

test.each([
  ["holm", holm],
  ["bh", bh],
  [null, holm],
])("Benjamini & Hochberg (1995), fifteen p values by %s", (method, expected) => {
  const adjusted = rowsOf("ADJUSTP", column(p), method).flat() as number[];
  expected.forEach((value, at) => expect(adjusted[at]).toBeCloseTo(value, 12));
});

test("by hand: blanks stay where they are and count for nothing; 0 is a p value", () => {
  // of two: 2 x 0.01, then 1 x 0.04
  expect(rowsOf("ADJUSTP", column([0.04, null, "", 0.01])).flat()).toEqual([0.04, null, null, 0.02]);
  expect(rowsOf("ADJUSTP", column([0, 0.4]), "bh").flat()).toEqual([0, 0.4]);
  expect(rowsOf("ADJUSTP", column([null, ""]))).toEqual([[null], [null]]);
  expect(rowsOf("ADJUSTP", 0.2)).toEqual([[0.2]]);
});

test("in any order each p value keeps its own answer", () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1 }), (values) => {
      const forwards = rowsOf("ADJUSTP", column(values), "bh");
      expect(rowsOf("ADJUSTP", column([...values].reverse()), "bh")).toEqual([...forwards].reverse());
    }),
  );
});

test.each([
  [[0.2, 1.2], "#NUM!", "Row 2: p lies between 0 and 1."],
  [[0.2, 0.3, "<0.01"], "#VALUE!", "Row 3: p is not a number: type it with digits alone."],
])("a bad row of %j makes the call an error that names it", (values, error, message) => {
  expect(answerOf("ADJUSTP", column(values))).toEqual({ error, message });
});
