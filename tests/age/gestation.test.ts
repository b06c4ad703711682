import { decimalEvidence, isBareDecimal, parseGestation } from "../../src/age/gestation";

test.each([
  ["28+3", 199],
  ["28 + 3", 199],
  ["28w3d", 199],
  ["28 W 3 D", 199],
  ["28 weeks 3 days", 199],
  ["28w", 196],
  ["28 3/7", 199],
  ["28+3/7", 199],
  ["28", 196],
  [28, 196],
  ["20", 140],
  ["45+6", 321],
  [140, 140],
  ["321", 321],
  ["２８＋３", 199], // full-width digits
])("%s is %i days", (cell, days) => {
  expect(parseGestation(cell, null)).toEqual({ kind: "days", days });
});

test.each(["19+6", "46", "46+0", "28+7", "28w9d", "139", "322", "term", "28-30", "28+", "-28", "3/7"])(
  "%s is no legal gestation",
  (cell) => {
    expect(parseGestation(cell, null)).toEqual({ kind: "illegal" });
  },
);

test("blank is blank", () => {
  expect(parseGestation("  ", null)).toEqual({ kind: "blank" });
  expect(parseGestation(null, null)).toEqual({ kind: "blank" });
});

test("a bare decimal waits for evidence or a setting", () => {
  expect(parseGestation(28.3, null)).toEqual({ kind: "undecided" });
  expect(parseGestation("28,3", "days")).toEqual({ kind: "days", days: 199 });
  expect(parseGestation(28.3, "weeks")).toEqual({ kind: "days", days: 198 }); // 28.3 x 7 = 198.1
  expect(parseGestation(28.7, "days")).toEqual({ kind: "illegal" });
  expect(isBareDecimal("28.0")).toBe(false);
});

test.each([
  ["28.43", "weeks"],
  ["28.7", "weeks"],
  ["28.9", "weeks"],
  ["28.3", null],
  ["28.30", null],
])("%s proves %s", (text, evidence) => {
  expect(decimalEvidence(text)).toBe(evidence);
});
