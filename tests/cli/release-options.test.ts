import { CommandFailure } from "../../src/cli/failure";
import { parseWords } from "../../src/cli/program";

const parse = (...words: string[]) => parseWords(["release", "b.xlsx", ...words], () => undefined);
const NEEDED = ["--tables", "met-by-band, trend", "--out", "r.xlsx"];

test("a release with everything it takes", () => {
  const words = [
    "--as-of",
    "2026-09-30",
    "--by",
    "Site",
    "--format",
    "xlsx,csv",
    "--ledger",
    "l.json",
    "--prose",
    "t.txt",
  ];
  expect(parse(...NEEDED, ...words, "--earlier", "e.json", "--floor", "5", "--release-method", "ranges")).toEqual({
    kind: "release",
    books: ["b.xlsx"],
    out: "r.xlsx",
    tables: ["met-by-band", "trend"],
    answer: null,
    formats: ["xlsx", "csv"],
    ledger: "l.json",
    prose: "t.txt",
    earlier: "e.json",
    decisions: null,
    tries: false,
    plan: false,
    skills: null,
    understanding: null,
    settings: { asOf: "2026-09-30", by: "Site", floor: "5", releaseMethod: "ranges" },
  });
});

test("without more it writes a workbook and looks at no ledger", () => {
  expect(parse(...NEEDED)).toMatchObject({ formats: ["xlsx"], ledger: null, prose: null, earlier: null, settings: {} });
});

/** 11: CMS cell size policy. 10 and 5: common practice, no source. */
test.each([["11"], ["10"], ["5"]])("the preset %s sets the threshold", (least) => {
  expect(parse(...NEEDED, "--preset", least)).toMatchObject({ settings: { minimumCell: least } });
  expect(parse(...NEEDED, "--preset", least, "--minimum-cell", least)).toMatchObject({
    settings: { minimumCell: least },
  });
});

test.each([
  [["--out", "r.xlsx"], /either --tables, .*or --answer/],
  [[...NEEDED, "--answer", "plans-in-time"], /either --tables, .*or --answer/],
  [["--tables", "trend"], /required option '--out <file>'/i],
  [["--tables", "trend", "--out", "r.csv"], /ends in \.xlsx/],
  [[...NEEDED, "--plan"], /--plan reads the release log: add --ledger/],
  [[...NEEDED, "--preset", "3"], /The presets are 11, 10, 5/],
  [[...NEEDED, "--preset", "11", "--minimum-cell", "20"], /different thresholds.*Nothing was written/],
])("%j is a bad request that says what to do", (words, message) => {
  expect(() => parse(...words)).toThrow(CommandFailure);
  expect(() => parse(...words)).toThrow(message);
});

test("help says every option, and who decides", () => {
  const printed: string[] = [];
  expect(parseWords(["release", "--help"], (text) => printed.push(text))).toBeNull();
  for (const option of [
    "--minimum-cell",
    "--floor",
    "--release-method",
    "--ledger",
    "--prose",
    "--earlier",
    "--format",
    "--preset",
    "--whole-groups",
  ])
    expect(printed.join("")).toContain(option);
  expect(printed.join("").replace(/\s+/g, " ")).toMatch(/45 CFR 164\.514 and 34 CFR 99\.31\(b\)/);
});
