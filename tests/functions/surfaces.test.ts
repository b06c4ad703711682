import { readFileSync } from "node:fs";
import path from "node:path";
import * as functions from "../../functions";
import { CellFailure, FUNCTIONS, setDateSystem } from "../../functions";
import { callFunction, isFunctionName } from "../../src/cli/call";
import { answerOf, column, rowsOf } from "./call";
import { ExcelError, inExcel } from "./in-excel";

const sources = readdir("functions").map((file) => readFileSync(path.join("functions", file), "utf8"));
const comments = new Map(
  sources.flatMap((source) => {
    const found = [
      ...source.matchAll(/\/\*\*((?:(?!\*\/)[^])*?@customfunction (\w+)[^]*?)\*\/\s*export function (\w+)/g),
    ];
    return found.map(
      ([, comment, name, exported]) => [name as string, { comment: comment as string, exported }] as const,
    );
  }),
);

function readdir(folder: string): string[] {
  return [
    "adjust-p",
    "age-when-met",
    "ages",
    "agreement",
    "changed",
    "child-tables",
    "expected-by-now",
    "met-by-band",
    "protect",
    "ratings",
    "referrals",
    "scan",
    "shares",
    "window-status",
  ].map((name) => (folder === "functions" ? `${name}.ts` : name));
}

describe.each([...FUNCTIONS])("%s", (name, { fn, parameters }) => {
  test("takes as many arguments as its list says, optional ones last", () => {
    expect(fn.length).toBe(parameters.length);
    const firstOptional = parameters.findIndex((each) => each.startsWith("["));
    const rest = firstOptional < 0 ? [] : parameters.slice(firstOptional);
    expect(rest.every((each) => each.startsWith("["))).toBe(true);
  });

  test("has a doc comment with every parameter in order and no types, and is exported", () => {
    const { comment, exported } = comments.get(name) ?? { comment: "", exported: "" };
    const named = [...comment.matchAll(/@param (\[?\w+\]?) \S/g)].map(([, parameter]) => parameter);
    expect(named).toEqual(parameters);
    expect(comment).toMatch(/@returns \S/);
    expect(comment).not.toMatch(/[{}]/);
    expect(functions[exported as keyof typeof functions]).toBe(fn);
  });
});

describe("dates go out as the workbook counts them", () => {
  // March 31, 2026 is serial 46112 (1900) and 44650 (1904), 1462 days fewer. Microsoft, "Differences between the 1900 and
  // the 1904 date system in Excel".
  const children = [
    ["Child", "Birth date", "Enrolled"],
    ["A", "2025-06-30", "2025-07-01"],
  ];
  const observations = [
    ["Child", "Skill", "Date", "Result"],
    ["A", "sits", "2026-03-31", "not met"],
  ];
  const skills = [
    ["Skill", "Label", "Area", "Opens", "Closes"],
    ["sits", "Sits", "gross motor", 4, 9],
  ];
  const lastLook = (asOf: unknown) => functions.skillStatus(children, observations, skills, asOf)[1]?.[9];
  afterEach(() => setDateSystem(1900));

  test("1900", () => expect(lastLook(46_112)).toBe(46_112));
  test("1904", () => {
    setDateSystem(1904);
    expect(lastLook(44_650)).toBe(44_650);
    expect(functions.age([[44_649]], [[44_650]], "days")).toEqual([[1]]);
    expect(rowsOf("AGE", 46_111, 46_112, "days")).toEqual([[1]]);
  });
  test("as JSON", () => {
    expect(rowsOf("SKILLSTATUS", children, observations, skills, 46_112)[1]?.[9]).toBe("2026-03-31");
  });
});

describe("errors", () => {
  test("Excel is given its own errors, thrown for the call and returned in a cell", () => {
    inExcel(() => {
      expect(() => functions.age([["soon"]], [["2026-01-01"]])).toThrow(ExcelError);
      const cells = functions.share(column([1, 0, 3, "x"]), column([2, 0, 2, 4])).map((row) => row[0]);
      expect(cells[0]).toBe(0.5);
      expect(cells.slice(1).map((cell) => (cell as ExcelError).code)).toEqual(["#N/A", "#NUM!", "#VALUE!"]);
      expect((cells[3] as ExcelError).message).toBe("count is not a number: type it with digits alone.");
    });
  });

  test("elsewhere a failure is a value of our own", () => {
    expect(() => functions.age([["soon"]], [["2026-01-01"]])).toThrow(CellFailure);
  });
});

describe("call", () => {
  test("takes a name with or without the namespace, in any case", () => {
    expect(callFunction("cohort.gestationdays", ["28+3"])).toEqual({ result: [[199]] });
    expect(callFunction("GESTATIONDAYS", [[["28+3"]]])).toEqual({ result: [[199]] });
    expect(isFunctionName("COHORT.AGE")).toBe(true);
  });

  test("a name that is not there is answered with those that are", () => {
    const answer = callFunction("COHORT.TODAY", []);
    expect(answer).toMatchObject({ error: "#NAME?" });
    expect((answer as { message: string }).message).toMatch(
      /^There is no function COHORT\.TODAY\. The functions are: COHORT\.AGE, /,
    );
    expect(isFunctionName("__proto__")).toBe(false);
  });

  test.each([
    [{}, 'COHORT.AGE(birth, on, [unit]) takes a JSON array of arguments, such as [[["2026-01-31"]], null].'],
    [["2026-01-01"], "COHORT.AGE(birth, on, [unit]): on is missing."],
    [["2026-01-01", "2026-02-01", "days", 1], "COHORT.AGE(birth, on, [unit]): 4 arguments were given."],
    [[["2026-01-01"], "2026-02-01"], "birth: a range is rows of cells, such as [[1],[2]]."],
    [[[[{ day: 1 }]], "2026-02-01"], "birth: a cell can have a number, text, TRUE or FALSE, or nothing."],
  ])("arguments %j are refused", (args, message) => {
    expect(callFunction("COHORT.AGE", args)).toEqual({ error: "#VALUE!", message });
  });

  test("rows of unequal length are filled up with blanks, as a sheet does", () => {
    expect(answerOf("AGEBAND", [[1, 7], [13]])).toEqual({
      result: [
        ["0 to <3 months", "6 to <9 months"],
        ["12 to <18 months", null],
      ],
    });
  });
});
