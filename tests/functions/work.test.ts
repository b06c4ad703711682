/** Which calls are answered away from the thread that the sheet waits for: by what they ask for, not by rows alone. */
import { goesElsewhere, WORKER_FROM_ROWS } from "../../functions/elsewhere/worker-calls";
import { FUNCTIONS } from "../../functions/registry";

const grid = (rows: number, columns: number, cell: unknown = 1) =>
  Array.from({ length: rows }, () => Array.from({ length: columns }, () => cell));

test.each([
  // Both were seen to hold the sheet's thread, for 34 and for 10 seconds.
  ["SCAN of 200 places and 60 periods, 9,999 replicates", "SCAN", [grid(200, 60), grid(200, 60), null, 9_999]],
  ["SCAN of 30 by 24, 99,999 replicates", "SCAN", [grid(30, 24), grid(30, 24), null, 99_999]],
  ["the number of replicates in a cell of its own", "SCAN", [grid(30, 24), grid(30, 24), 0, [[99_999]]]],
  ["the number of replicates as text", "SCAN", [grid(30, 24), grid(30, 24), null, "99999"]],
  ["many random repeats of a short scan", "SCAN", [grid(3, 12), grid(3, 12), null, 99_999]],
  ["a scan of 500 places without repeats", "SCAN", [grid(500, 2), grid(500, 2), 1, 1]],
  ["limits of an age at 60 children, which take 1,000 repeats", "AGEWHENMET", [grid(30, 1), grid(30, 1)]],
  ["mid-p limits of 20 shares", "SHARE", [grid(20, 1), grid(20, 1), null, "mid-p"]],
  ["exact limits, the method in a cell", "SHARE", [grid(20, 1), 40, 0.95, [["Exact"]]]],
  ["a row of 600 dates", "AGE", [grid(1, 600), 46_000]],
  ["a column of 50,000 dates", "AGE", [grid(50_000, 1), 46_000]],
  ["what needs the solver, however small", "PROTECT", [grid(1, 1)]],
] as const)("%s go to the worker", (_, name, args) => {
  expect(goesElsewhere(name, args)).toBe(true);
});

test.each([
  ["a usual scan of 5 sites in 12 months", "SCAN", [grid(5, 12), grid(5, 12)]],
  ["a scan of 30 by 24 with few repeats", "SCAN", [grid(30, 24), grid(30, 24), 3, 99]],
  ["one age", "AGE", [46_000, 46_100]],
  ["a column of 200 dates", "AGE", [grid(200, 1), 46_000]],
  ["one share by mid-p", "SHARE", [3, 40, 0.95, "mid-p"]],
  ["200 shares by Wilson's formula", "SHARE", [grid(200, 1), grid(200, 1)]],
  ["limits of an age at 10 children", "AGEWHENMET", [grid(10, 1), grid(10, 1)]],
] as const)("%s are answered at once", (_, name, args) => {
  expect(goesElsewhere(name, args)).toBe(false);
});

test("every function goes to the worker from 500 rows on", () => {
  for (const [name, { parameters }] of FUNCTIONS) {
    const args = parameters.map((_, at) => (at === 0 ? grid(WORKER_FROM_ROWS, 1) : 1));
    expect([name, goesElsewhere(name, args)]).toEqual([name, true]);
  }
});
