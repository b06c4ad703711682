import { oracleEstimates } from "./estimates";
import { child, look, program } from "./programs";
import { SIX_CHILDREN } from "./six-children";

const estimates = oracleEstimates(SIX_CHILDREN);
const MONTH = 30.4375;

test("age when met of the six children", () => {
  // Days: A (102, 193], B (0, 153], C (169, ..), D (168, ..), E (0, 121]. All can agree on (102, 121] and (169, 193] only.
  // B and E are met in the first, C and D in the second, A in either: likelihood p^2 (1 - p)^2, so half in each.
  const [row] = estimates["age-when-met"];
  const days = { p10: 102 + 19 * 0.2, p25: 102 + 19 * 0.5, p50: 121, p75: 169 + 24 * 0.5, p90: 169 + 24 * 0.8 };
  for (const [key, value] of Object.entries(days)) expect(row?.[key]).toBeCloseTo(value / MONTH, 5);
  // 9 months are 273.9 days: beyond the last piece, and nobody is left over.
  expect(row?.["shareByClose"]).toBe(1);
});

test("reached by age of the six children, read at edges of 30.4375 days a month", () => {
  const shares = estimates["reached-by-age"].map((row) => row["estimate"]);
  // 6 months are 182.625 days, 13.625 of the 24 days of the second piece.
  const expected = [0, 0, 0.5 + (0.5 * 13.625) / 24, 1, 1, 1, 1, 1];
  shares.forEach((share, i) => expect(share).toBeCloseTo(expected[i] ?? NaN, 9));
});

test("since enrollment: three children checked without the skill, then with it", () => {
  // From 15 February, days: A (15, 46], B (15, 55], C (46, 107]: pieces (15, 46] and (46, 55]; A in the first, C in the
  // second, B in either: p (1 - p), so half in each.
  const enrolled = { enrolled: "2024-02-15" };
  const looks = [
    ...[look("A", "2024-03-01", "not met"), look("A", "2024-04-01", "met")],
    ...[look("B", "2024-03-01", "not met"), look("B", "2024-04-10", "met")],
    ...[look("C", "2024-04-01", "not met"), look("C", "2024-06-01", "met")],
  ];
  const three = program(
    ["A", "B", "C"].map((id) => child(id, "2023-10-01", enrolled)),
    looks,
  );
  const [row] = oracleEstimates(three)["since-enrollment"];
  const days = { p25Weeks: 15 + 31 * 0.5, p50Weeks: 46, p75Weeks: 46 + 9 * 0.5 };
  for (const [key, value] of Object.entries(days)) expect(row?.[key]).toBeCloseTo(value / 7, 5);
});

test("nobody met it: nothing is estimated", () => {
  const input = program([child("A", "2024-01-01")], [look("A", "2024-05-01", "not met")]);
  const { "age-when-met": ages, "reached-by-age": reached } = oracleEstimates(input);
  expect(ages).toEqual([{ skill: "sits", p10: null, p25: null, p50: null, p75: null, p90: null, shareByClose: null }]);
  expect(reached.every((row) => row["estimate"] === null)).toBe(true);
});
