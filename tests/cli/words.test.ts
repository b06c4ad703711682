import { CommandFailure } from "../../src/cli/failure";
import { parseWords } from "../../src/cli/program";

const parse = (...words: string[]) => parseWords(words, () => undefined);

test("two workbooks: settings of the later one, and those of the earlier one that differ", () => {
  expect(
    parse(
      "changed",
      "a.xlsx",
      "b.xlsx",
      "--as-of",
      "2026-09-30",
      "--earlier-as-of",
      "2026-06-30",
      "--earlier-recheck",
      "60",
    ),
  ).toMatchObject({
    kind: "changed",
    earlier: "a.xlsx",
    books: ["b.xlsx"],
    settings: { asOf: "2026-09-30" },
    earlierSettings: { asOf: "2026-06-30", recheck: "60" },
  });
});

test("a report with settings in kebab case", () => {
  expect(
    parse(
      "report",
      "b.xlsx",
      "--as-of",
      "2026-09-30",
      "--by",
      "Site,Therapist",
      "--tables",
      "met-by-band, age-when-met",
    ),
  ).toEqual({
    kind: "report",
    last: null,
    books: ["b.xlsx"],
    out: null,
    data: null,
    json: null,
    tables: ["met-by-band", "age-when-met"],
    understanding: null,
    decisions: null,
    settings: { asOf: "2026-09-30", by: "Site,Therapist" },
  });
});

test("a check, a call and a sample", () => {
  expect(parse("check", "b.xlsx", "--json", "f.json")).toMatchObject({ kind: "check", json: "f.json", settings: {} });
  expect(parse("call", "COHORT.AGE")).toEqual({ kind: "call", name: "COHORT.AGE" });
  expect(
    parse("sample", "--out", "s.xlsx", "--children", "12", "--seed", "3", "--defects", "--truth", "t.json"),
  ).toEqual({
    kind: "sample",
    children: 12,
    seed: 3,
    out: "s.xlsx",
    defects: true,
    truth: "t.json",
  });
});

test.each([
  [["report"], /missing required argument 'books'.*report --help/is],
  [["report", "b.xlsx", "--colour", "red"], /unknown option '--colour'/i],
  [["repport", "b.xlsx"], /There is no command "repport".*--help/],
  [["sample"], /required option '--out <file>'/i],
  [["sample", "--out", "s.xlsx", "--children", "many"], /whole number/i],
  [["sample", "--out", "s.txt"], /'s\.txt'.*ends in \.xlsx/],
  [["report", "b.xlsx", "--out", "r.json"], /'r\.json'.*ends in \.xlsx/],
  [["page", "b.xlsx", "--child", "A", "--out", "page"], /'page'.*ends in \.xlsx/],
])("%j is a bad request that says what to do", (words, message) => {
  const failure = refusal(() => parse(...words));
  expect(failure.exitCode).toBe(2);
  expect(failure.message).toMatch(message);
});

test.each([[["--help"]], [["report", "--help"]], [["--version"]], [[]]])("%j prints and asks for nothing", (words) => {
  const printed: string[] = [];
  expect(parseWords(words, (text) => printed.push(text))).toBeNull();
  expect(printed.join("")).not.toBe("");
});

test("a report does not speak of the settings that only a release uses, and takes them all the same", () => {
  let help = "";
  parseWords(["report", "--help"], (text) => (help += text));
  expect(help).toMatch(/--level/);
  expect(help).not.toMatch(/--minimum-cell|--whole-groups/);
  expect(parse("report", "b.xlsx", "--minimum-cell", "8")).toMatchObject({ settings: { minimumCell: "8" } });
});

function refusal(run: () => unknown): CommandFailure {
  try {
    run();
  } catch (error) {
    if (error instanceof CommandFailure) return error;
    throw error;
  }
  throw new Error("nothing was refused");
}
