import { agreement } from "../../functions";
import { cohen1968, fleiss2003 } from "../published/fleiss-2003";
import { answerOf, column, rowsOf } from "./call";

type Published = Omit<typeof fleiss2003 | typeof cohen1968, "printedKappa">;

/** The two columns that a table of counts stands for. */
function pairsOf(counts: Published["counts"]): [number[], number[]] {
  const pairs = counts.flatMap((row, i) =>
    row.flatMap((count, j) => Array.from({ length: count }, (): [number, number] => [i + 1, j + 1])),
  );
  return [pairs.map(([first]) => first), pairs.map(([, second]) => second)];
}

test.each([
  ["Fleiss, Levin & Paik (2003)", fleiss2003],
  ["Cohen (1968)", cohen1968],
] as const)("%s", (_source, published) => {
  const [first, second] = pairsOf(published.counts);
  const [n, percent, kappa, lower, upper] = rowsOf("AGREEMENT", column(first), column(second))[0] as number[];
  expect([n, percent]).toEqual([published.n, published.percent]);
  expect(kappa).toBeCloseTo(published.kappa, 12);
  expect(kappa).toBeCloseTo(published.printedKappa, 2);
  // limits are 1.96 standard errors away
  expect(((upper as number) - (lower as number)) / 2 / 1.959963984540054).toBeCloseTo(published.standardError, 10);
});

test("by hand: pairs with a blank, or 0, are dropped; words are compared without case and spaces, numbers with their text", () => {
  const first = ["met", "Met ", null, "", 0, "lost", "3"];
  const second = ["met", "met", "met", "met", "met", 0, 3];
  const [n, percent] = rowsOf("AGREEMENT", column(first), column(second))[0] as number[];
  expect([n, percent]).toEqual([3, 100]);
});

test("kappa cannot be estimated where all results are the same", () => {
  expect(rowsOf("AGREEMENT", column(["met", "met"]), column(["met", "met"]))).toEqual([[2, 100, null, null, null]]);
  expect(agreement([["met"]], [["met"]])[0]?.[2]).toMatchObject({ code: "#N/A" });
});

test.each([
  [[[["met"], ["lost"]], [["met"]]], "#VALUE!", "first has 2 rows and second has 1: give both the same."],
  [
    [
      [["met"], [null]],
      [[null], ["met"]],
    ],
    "#N/A",
    "No row has a result of both.",
  ],
])("AGREEMENT(%j) is refused", (args, error, message) => {
  expect(answerOf("AGREEMENT", ...args)).toEqual({ error, message });
});
