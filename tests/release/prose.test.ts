import { checkProse, hiddenFigures, proseLines } from "../../src/release/prose";
import { numbersIn } from "../../src/release/prose-numbers";
import { BANDS, prepared, TRUE_BANDS } from "./support/prepared";

const hidden = hiddenFigures(BANDS, TRUE_BANDS);
const check = (text: string) => checkProse(text, prepared(), hidden);
const kinds = (text: string) => check(text).map(({ kind, written }) => `${kind} ${written}`.trim());

test("numbers that the release shows are found, with their place", () => {
  const found = check("On 30 September 2026, 53 of 85 children assessed at North walked alone (62.4%).");
  expect(found.map(({ kind }) => kind)).toEqual(["found", "found", "found"]);
  expect(found[0]?.message).toContain("met-by-band, North, walk-alone");
});

test("a number that no table shows is not found, and a wrong decimal is no match", () => {
  expect(kinds("In the third quarter of 2026, 54 of 85 children walked (62.5%).")).toEqual([
    "not found 54",
    "not found 62.5%",
    "found 85",
  ]);
});

test("what the rule holds back is a leak: a small count, in digits or words, and the share behind it", () => {
  expect(kinds("As of 2026-09-30, 4 of 37 children at South walked (10.8%).")).toEqual([
    "leak 4",
    "leak 10.8%",
    "found 37",
  ]);
  expect(kinds("In Q3 2026, four of the 37 children at South walked.")).toEqual(["leak four", "found 37"]);
  const [leak] = check("In Q3 2026, 10.8% of 37 children walked.");
  expect(leak).toMatchObject({ kind: "leak" });
  expect(leak?.message).toMatch(/met-by-band, South, walk-alone.*Share met holds back/);
});

test("the true count behind a rounded one is a leak", () => {
  const rounded = { ...BANDS, rows: BANDS.rows.map((row) => row.map((value) => (value === 85 ? 90 : value))) };
  const found = checkProse("In Q3 2026, 85 children.", prepared([rounded]), hiddenFigures(rounded, TRUE_BANDS));
  expect(found).toMatchObject([{ kind: "leak", written: "85" }]);
});

test("a percent without its numbers, and a text without its period", () => {
  expect(kinds("62.4% of children at North walked.")).toEqual(["denominator 62.4%", "period", "found 62.4%"]);
  expect(kinds("By September 2026, 62.4% (53/85) walked.")).not.toContain("denominator 62.4%");
  expect(kinds("By September 2026, 62.4% (n = 85) walked.")).not.toContain("denominator 62.4%");
  expect(kinds("The program is well.")).toEqual([]);
});

test("causal verbs are advice only", () => {
  expect(kinds("In 2026-Q3 the visits led to 53 of 85 children walking, thanks to the program.")).toEqual([
    "advice led to",
    "advice thanks to",
    "found 53",
    "found 85",
  ]);
});

test("dates, years, quarters, laws, ages, levels and list numbers are no figures", () => {
  const text =
    "1. On September 30, 2026 (2026-Q3; since 2019; 34 CFR 99.31(b)), at 12 to <18 months, with 95% limits, one of the sites and nine in ten children, per 100 child-months.";
  expect(numbersIn(text).filter(({ kind }) => kind !== "age")).toEqual([]);
  expect(numbersIn("an 18-month-old").map(({ kind }) => kind)).toEqual(["age"]);
});

test.each([
  ["1,204 children", [1204, "count", 0]],
  ["62.4 percent", [62.4, "percent", 1]],
  ["1.91 per 100 child-months", [1.91, "decimal", 2]],
  ["twelve families", [12, "count", 0]],
  ["53%", [53, "percent", 0]],
])("%s is read", (text, [value, kind, decimals]) => {
  expect(numbersIn(text as string)).toMatchObject([{ value, kind, decimals }]);
});

test("lines for the terminal say the sentence and the number, leaks first, and never what is held back", () => {
  const lines = proseLines(check("In Q3 2026 53 of 85 walked. At South 12 children of 37 did."));
  expect(lines[0]).toMatch(/^not found \(sentence 2, "12"\): no table of the release shows it/);
  expect(lines.join("\n")).not.toMatch(/\b4\b/);
});
