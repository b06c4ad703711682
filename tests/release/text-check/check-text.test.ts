import { textLines } from "../../../src/release/text-check/check-text";
import { numbersIn } from "../../../src/release/text-check/numbers";
import { passageOf } from "../../../src/release/text-check/passage";
import { check, checkBeside } from "./program";

const summary = (text: string) => check(text).map(({ kind, written }) => `${kind} ${written}`.trim());

test("a pair with its percent agrees as one, with its place", () => {
  const [found] = check("On September 30, 2026, 61 of 84 children checked walked alone (72.6%).");
  expect(found).toMatchObject({ kind: "agrees", written: "61 of 84 children checked walked alone (72.6%".concat("") });
  expect(found?.message).toContain("met-by-band, walk-alone");
});

test("a number that is held back is a leak even where another row shows the same number", () => {
  // 49 children checked is shown; a text that says 51 of 55 gives the held back 51 away, and so does 51 alone.
  expect(summary("In Q3 2026, 51 of 55 children walked.")).toEqual(["leak 51"]);
});

test("offsets are those of the text as written, also behind characters that are read as others", () => {
  const text = "In Q3 2026, 61 of 84 children walked. Ｗｅ served \u200b３１２ children.";
  const finding = check(text).find(({ rule }) => rule === "no table")!;
  expect(text.slice(finding.start, finding.end)).toBe("３１２");
});

test("a sentence of the release agrees however it is put, and the same words with another number do not", () => {
  const said =
    'In Q3 2026, 61 of 84 children had met "Walks several steps alone" (72.6%; 95% confidence interval 62.2% to 81.1%).';
  expect(check(`  ${said.replace("2026, 61", "2026,  61")}`, [said]).map(({ kind }) => kind)).toEqual(["agrees"]);
  expect(check(said.replace("61 of", "62 of"), [said]).map(({ kind }) => kind)).not.toContain("agrees");
});

test("a passage without figures has no findings", () => {
  expect(check("The program is well.")).toEqual([]);
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
  ["forty-two children", [42, "count", 0]],
  ["53%", [53, "percent", 0]],
])("%s is read", (text, [value, kind, decimals]) => {
  expect(numbersIn(text as string)).toMatchObject([{ value, kind, decimals }]);
});

test("sentences keep their places, and a full stop in a number does not end one", () => {
  const { sentences } = passageOf("One. Two 1.5 here.\n\nThree");
  expect(sentences.map(({ start, text }) => [start, text])).toEqual([
    [0, "One."],
    [5, "Two 1.5 here."],
    [20, "Three"],
  ]);
});

test("lines for the terminal begin with leaks, and never say what is held back", () => {
  const lines = textLines(check("In Q3 2026, 62 of 84 children walked. At 18 to <24 months 12 children of 55 did."));
  expect(lines[0]).toMatch(/^Correct \(sentence 1, "62 of 84"\)/);
  expect(lines.join("\n")).not.toMatch(/\b51\b/);
});

test("one percent and one pair of a sentence belong together, however far apart they stand", () => {
  const far =
    "In Q3 2026, 61 of 84 children checked at twelve to under eighteen months in all of our sites together walked alone (72.6%).";
  expect(check(far).map(({ kind }) => kind)).toEqual(["agrees"]);
});

test("numbers of no row are said to be that, also where their percent is one that is held back", () => {
  // 51 of 55 is held back, a share of 92.7%; 5,562 of 6,000 has the same percent and is in no row.
  const found = check("In Q3 2026, of 6,000 checks of skills, 5,562 were met (92.7%).");
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ kind: "mend", rule: "no table" });
  expect(found[0]?.written).toMatch(/^6,000.*5,562.*92\.7%$/);
});

test("of rows with the same numbers, the one that the sentence speaks of is named", () => {
  const columns = [
    { key: "skill", label: "Skill", unit: "text" },
    { key: "assessed", label: "Checked", unit: "children" },
    { key: "met", label: "Met", unit: "children" },
  ] as const;
  const rows = [
    ["pull-up", 60, 30],
    ["walk-alone", 60, 30],
  ];
  const table = { id: "met-by-band", title: "", population: "", notes: [], rows, columns } as const;
  const [found] = checkBeside("In Q3 2026, 30 of 60 children walked.", [table]);
  expect(found).toMatchObject({ kind: "agrees", message: expect.stringContaining("walk-alone") });
});
