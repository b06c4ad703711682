/** The command `changed` from files to files. The figures are counted on paper from the rows below. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { writeWorkbook } from "../../src/hosts/file/write-workbook";
import { temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);
const changed = (...words: string[]) => windowline(["changed", ...words]);

type Rows = readonly (readonly (string | number)[])[];
const CHILDREN: Rows = ["A", "B", "C"].map((id) => [id, "2023-11-10", "2024-01-10", ""]);
/** On June 30, 2024: A has met it, B was not yet seen with it 60 days before, C was never checked. All are 7 months old. */
const CHECKS: Rows = [
  ["A", "sits", "2024-05-01", "met"],
  ["B", "sits", "2024-05-01", "not met"],
];

function writeBook(name: string, children: Rows, checks: Rows): void {
  const sheetOf = (sheet: string, rows: Rows) => ({ name: sheet, columns: rows[0]!.map(() => ({ width: 12 })), rows });
  const sheets = [
    sheetOf("Children", [["Child", "Birth date", "Enrolled", "Left"], ...children]),
    sheetOf("Observations", [["Child", "Skill", "Date", "Result"], ...checks]),
    sheetOf("Skills", [["Skill", "Label", "Area", "Opens", "Closes", "Age basis"], SITS]),
  ];
  writeFileSync(at(name), writeWorkbook(sheets, { created: 19_800 }));
}

const SITS = ["sits", "Sits", "gross motor", 6, 9, "chronological"];

beforeAll(() => {
  writeBook("june.xlsx", CHILDREN, CHECKS);
  // entered late: C. In July A left, D came, B met it
  const [, ...others] = CHILDREN;
  const came = ["D", "2023-11-10", "2024-07-15", ""];
  const since = ["B", "sits", "2024-07-20", "met"];
  const children = [["A", "2023-11-10", "2024-01-10", "2024-07-10"], ...others, came];
  writeBook("july.xlsx", children, [...CHECKS, ["C", "sits", "2024-06-01", "met"], since]);
  const made = windowline(["report", at("june.xlsx"), "--as-of", "2024-06-30", "--json", at("june.json")]);
  expect(made).toMatchObject({ status: 0 });
});

const DAYS = ["--as-of", "2024-07-31", "--earlier-as-of", "2024-06-30"];

interface Json {
  readonly tables: readonly {
    readonly id: string;
    readonly columns: readonly { readonly key: string }[];
    readonly rows: readonly (readonly unknown[])[];
  }[];
  readonly provenance: { readonly earlier: unknown };
}

function jsonIn(name: string): Json {
  return JSON.parse(readFileSync(at(name), "utf8")) as Json;
}

/** Earlier, the parts that are not nothing, and later, of the one skill, by measure. */
function rowsOf(name: string): Record<string, unknown> {
  const [{ columns, rows }] = jsonIn(name).tables as unknown as [Json["tables"][number]];
  const own = rows.map((row) => Object.fromEntries(columns.map(({ key }, column) => [key, row[column]])));
  return Object.fromEntries(
    own
      .filter(({ skill }) => skill === "sits")
      .map(({ table: _table, skill: _skill, area: _area, band: _band, measure, ...counts }) => [
        measure,
        Object.fromEntries(Object.entries(counts).filter(([, count]) => count !== 0)),
      ]),
  );
}

test("with an earlier workbook: the parts, their sentences, and a workbook to read", () => {
  const run = changed(at("june.xlsx"), at("july.xlsx"), ...DAYS, "--json", at("both.json"), "--out", at("both.xlsx"));
  expect(run).toMatchObject({ status: 0, stderr: "" });
  expect(rowsOf("both.json")).toEqual({
    children: { earlier: 3, joined: 1, left: -1, later: 3 },
    assessed: { earlier: 2, enteredLate: 1, left: -1, later: 2 },
    met: { earlier: 1, enteredLate: 1, left: -1, metSince: 1, later: 2 },
  });
  expect(run.stdout).toContain("From June 30, 2024 (the earlier workbook) to July 31, 2024:\n");
  expect(run.stdout).toContain("1 skill checks met became 2: 1 entered late, 1 left and 1 met since.\n");
  expect(jsonIn("both.json").provenance.earlier).toMatchObject({ from: "workbook", settings: { asOf: "2024-06-30" } });
  expect(windowline(["check", at("both.xlsx")]).stdout).not.toBe("");
});

test("with an earlier report alone, what only a workbook can tell is null and stands under corrected", () => {
  const run = changed(at("june.json"), at("july.xlsx"), "--as-of", "2024-07-31", "--json", at("report.json"));
  expect(run).toMatchObject({ status: 0, stderr: "" });
  const untold = { enteredLate: null, removed: null };
  expect(rowsOf("report.json")).toEqual({
    children: { earlier: 3, joined: 1, left: -1, later: 3, ...untold },
    assessed: { earlier: 2, corrected: 1, left: -1, later: 2, ...untold },
    met: { earlier: 1, corrected: 1, left: -1, metSince: 1, later: 2, ...untold },
  });
  expect(run.stdout).toMatch(/A report says how many and never who/);
});

test("a setting of the earlier workbook alone is a definition that changed", () => {
  const words = [...DAYS, "--earlier-recheck", "30", "--json", at("recheck.json")];
  expect(changed(at("june.xlsx"), at("july.xlsx"), ...words).status).toBe(0);
  expect(rowsOf("recheck.json")).toMatchObject({
    assessed: { earlier: 1, enteredLate: 1, definition: 1, left: -1, later: 2 },
  });
});

test("the children behind a part come only when they are named", () => {
  expect(readFileSync(at("both.json"), "utf8")).not.toMatch(/"child"/);
  const words = [...DAYS, "--tables", "what-changed-children", "--json", at("behind.json")];
  expect(changed(at("june.xlsx"), at("july.xlsx"), ...words).status).toBe(0);
  const [table] = jsonIn("behind.json").tables;
  const metSince = table!.rows.filter((row) => row.includes("metSince"));
  expect(metSince.map(([child]) => child)).toEqual(["B"]);
});

test.each([
  [["june.xlsx", "july.xlsx"], 2, /add --as-of/],
  [
    ["june.xlsx", "july.xlsx", "--as-of", "2024-06-30", "--earlier-as-of", "2024-07-31"],
    2,
    /name the earlier workbook/,
  ],
  [["june.xlsx", "july.xlsx", ...DAYS, "--tables", "met-by-band"], 2, /what-changed, what-changed-children; not/],
  [["june.xlsx", "july.xlsx", ...DAYS, "--earlier-by", "Color"], 2, /no column "Color"/],
  [["june.json", "july.xlsx", "--as-of", "2024-07-31", "--earlier-recheck", "60"], 2, /brings its own day/],
  [["other.json", "july.xlsx", "--as-of", "2024-07-31"], 2, /not a REPORT\.json that windowline report wrote/],
  [["none.xlsx", "july.xlsx", ...DAYS], 3, /no such file/],
])("%j ends with %i and one sentence", (words, status, message) => {
  writeFileSync(at("other.json"), "{}");
  const run = changed(...words.map((word) => (/^\w+\.(xlsx|json)$/.test(word) ? at(word) : word)));
  expect({ status: run.status, stdout: run.stdout }).toEqual({ status, stdout: "" });
  expect(run.stderr).toMatch(message);
});

test("a file of the request is never written over", () => {
  const run = changed(at("june.json"), at("july.xlsx"), "--as-of", "2024-07-31", "--json", at("june.json"));
  expect(run).toMatchObject({ status: 2, stdout: "" });
  expect(jsonIn("june.json").tables.length).toBeGreaterThan(1);
});
