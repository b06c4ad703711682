import { understand } from "../../../src/records/understanding/understand";
import { decisionsOf } from "../../../src/records/understanding/file";
import { oneWorkbook } from "../../../src/workbook/sources";
import type { SheetIn, WorkbookIn } from "../../../src/workbook/workbook";
import { Following } from "../../../src/cohort/following";
import { dayFromIso } from "../../../src/age/day";
import type { Records } from "../../../src/records/records";
import { book, CHILDREN, OBSERVATIONS, read, type Rows, serial, sheet, SKILLS, unusable } from "../book";

const HEAD = CHILDREN[0]!;
const [north, hill]: SheetIn[][] = [
  [sheet("Children", CHILDREN), sheet("Observations", OBSERVATIONS), sheet("Skills", SKILLS)],
  [sheet("Children", [HEAD, ["B1", "2025-02-01", null, "Hill", "T9", "2025-03-01", null, null]])],
] as const;

function files(parts: Readonly<Record<string, SheetIn[] | WorkbookIn>>): WorkbookIn {
  return oneWorkbook(
    Object.entries(parts).map(([file, of]) => ({ file, workbook: Array.isArray(of) ? book(of) : of })),
  );
}

const places = ({ findings }: Pick<Records, "findings">, wanted: string) =>
  findings.filter(({ rule }) => rule === wanted).map(({ file, sheet: name, cell }) => `${file} ${name} ${cell}`);

function children(...rows: Rows): SheetIn[] {
  return [sheet("Children", [HEAD, ...rows])];
}

test("every finding and every table names its file", () => {
  const records = read(files({ "NORTH.xlsx": north!, "HILL.xlsx": hill! }));
  expect(records.input.map(({ table, file, address }) => `${table} ${file} ${address}`)).toEqual([
    "Children NORTH.xlsx A1:H4",
    "Children HILL.xlsx A1:H2",
    "Observations NORTH.xlsx A1:F5",
    "Skills NORTH.xlsx A1:J4",
  ]);
  expect(Object.keys(records.input[0]!).slice(0, 3)).toEqual(["table", "file", "sheet"]);
});

test("one child in two files is one child; with different birth dates it is left out until settled, at both cells", () => {
  const other = (birth: string) =>
    read(
      files({
        "NORTH.xlsx": north!,
        "HILL.xlsx": children(["a1 ", birth, null, "Hill", "T9", "2025-06-01", null, null]),
      }),
    );
  const same = other("2024-03-31");
  expect(same.children.ids).toEqual(["A1", "A2", "A3"]);
  expect(same.enrolments.child).toHaveLength(4);
  const differ = other("2024-04-30");
  expect(differ.children.ids).toEqual(["A2", "A3"]);
  expect(places(differ, "birth-conflict")).toEqual(["NORTH.xlsx Children B2", "HILL.xlsx Children B2"]);
});

describe("skills that two files tell", () => {
  test("rows that differ stop the reading, with both cells; the same rows count once", () => {
    const other = SKILLS.map((row, at) => (at === 3 ? row.map((cell) => (cell === 17.6 ? 18 : cell)) : row));
    const failure = unusable(files({ "NORTH.xlsx": north!, "HILL.xlsx": [...hill!, sheet("Skills", other)] }));
    expect(failure.table).toBe("Skills");
    expect(failure.message).toMatch(
      /^Skills: \[NORTH\.xlsx\]Skills!A4 and \[HILL\.xlsx\]Skills!A4 say different things/,
    );
    expect(places(failure, "skill-twice")).toEqual(["NORTH.xlsx Skills A4", "HILL.xlsx Skills A4"]);
    expect(read(files({ "NORTH.xlsx": north!, "HILL.xlsx": [...hill!, sheet("Skills", SKILLS)] })).skills).toHaveLength(
      3,
    );
  });

  test("within one file the first row is used, as ever", () => {
    const twice = [...SKILLS, ["walks", "Walks", "gross motor", 1, 2, null, null, null, null, null]];
    expect(read({ skills: twice }).skills).toHaveLength(3);
  });
});

/** The site of a child on a day: null where the child is not in the program, "" where it is at neither site. */
function siteOn({ enrolments, children: { ids } }: Records, child: string, day: string): string | null {
  const row = new Following(enrolments, ids.length).enrolmentOn(ids.indexOf(child), dayFromIso(day)!);
  return row < 0 ? null : enrolments.columns.find(({ heading }) => heading === "Site")!.values[row]!;
}

describe("enrollments of one day at two sites", () => {
  const at = (site: string, left: string | null) => [
    "C1",
    "2025-01-01",
    null,
    site,
    `T-${site}`,
    "2025-03-01",
    left,
    null,
  ];
  const both = (first: string | null, second: string | null) =>
    read(
      files({ "NORTH.xlsx": [...north!, ...children(at("North", first))], "HILL.xlsx": children(at("Hill", second)) }),
    );

  test("are listed at both cells, and the child is at neither site on the days of both", () => {
    const records = both(null, null);
    expect(places(records, "enrolment-two-sites")).toEqual(["NORTH.xlsx Children D2", "HILL.xlsx Children D2"]);
    expect(places(records, "enrolment-overlap")).toEqual([]);
    expect(siteOn(records, "C1", "2025-02-28")).toBeNull();
    expect(siteOn(records, "C1", "2025-03-01")).toBe("");
    expect(siteOn(records, "C1", "2027-01-01")).toBe("");
    expect(records.findings.find(({ rule }) => rule === "enrolment-two-sites")?.severity).toBe("warning");
  });

  test.each([
    ["2025-06-01", null, "Hill"],
    [null, "2025-06-01", "North"],
    ["2025-09-01", "2025-06-01", "North"],
  ])("left %s and %s: from the day on which one site is left it is that one", (first, second, later) => {
    const records = both(first, second);
    expect(siteOn(records, "C1", "2025-05-31")).toBe("");
    expect(siteOn(records, "C1", "2025-06-01")).toBe(later);
    expect(siteOn(records, "C1", "2025-10-01")).toBe(first && second ? null : later);
    expect(records.enrolments.columns.find(({ heading }) => heading === "Therapist")!.values).toHaveLength(5);
  });

  test("two rows of one site and day stay as they are", () => {
    const records = read(files({ "NORTH.xlsx": north!, "HILL.xlsx": children(at("Hill", null), at("hill ", null)) }));
    expect(places(records, "enrolment-two-sites")).toEqual([]);
    expect(siteOn(records, "C1", "2025-04-01")).toBe("Hill");
  });
});

test("each file keeps its own date system", () => {
  const dated = (system: 1900 | 1904) =>
    book(
      [sheet("Children", [HEAD, ["B1", serial("2025-02-01", system), null, "Hill", "T9", "2025-03-01", null, null]])],
      system,
    );
  for (const system of [1900, 1904] as const) {
    const records = read(files({ "NORTH.xlsx": north!, "HILL.xlsx": dated(system) }));
    expect(records.children.birth[3]).toBe(dayFromIso("2025-02-01"));
  }
});

describe("what a file lacks is said", () => {
  test("a table with a heading that was not found, though another file has the table", () => {
    const bad = OBSERVATIONS.map((row, at) => (at === 0 ? row.map((cell) => (cell === "Result" ? "R" : cell)) : row));
    const records = read(files({ "NORTH.xlsx": north!, "HILL.xlsx": [...hill!, sheet("Observations", bad)] }));
    expect(places(records, "heading-unknown")).toContain("HILL.xlsx Observations D1");
    expect(records.findings.find(({ rule }) => rule === "heading-unknown")?.severity).toBe("error");
  });

  test("a file in which no table was found", () => {
    const records = read(files({ "NORTH.xlsx": north!, "letter.xlsx": [sheet("Letter", [["Dear families"]])] }));
    expect(places(records, "file-not-used")).toEqual(["letter.xlsx  "]);
  });
});

describe("one understanding for like files", () => {
  const named = (headings: readonly string[], ...rows: Rows) => [sheet("Kids", [headings, ...rows])];
  const kids = (site: string, ...ids: string[]) => ids.map((id) => [id, "2024-01-01", site, "2024-03-01"]);
  const HEADINGS = ["Kid no.", "Birthday", "Where", "Start"];
  const rest = [
    sheet(
      "Observations",
      OBSERVATIONS.map((row) => row.map((cell) => (cell === "A1" ? "K1" : cell))),
    ),
  ];
  const both = files({
    "NORTH.xlsx": [...named(HEADINGS, ...kids("North", "K1", "K2", "K3")), ...rest, sheet("Skills", SKILLS)],
    "HILL.xlsx": named(HEADINGS, ...kids("Hill", "K4", "K5", "K6")),
  });
  const found = understand(both);

  test("each sheet is shown with its file, and settled once", () => {
    expect(found.sheets.map(({ file, sheet: name, is }) => `${file} ${name} ${is}`)).toEqual([
      "NORTH.xlsx Kids children",
      "NORTH.xlsx Observations observations",
      "NORTH.xlsx Skills skills",
      "HILL.xlsx Kids children",
    ]);
    expect(decisionsOf(found).filter((each) => each.kind === "sheet" && each.sheet === "Kids")).toHaveLength(1);
  });

  test("what was settled holds for the sheets of that name in every file, each read once", () => {
    const records = read(both, {}, decisionsOf(found));
    expect(records.children.ids).toEqual(["K1", "K2", "K3", "K4", "K5", "K6"]);
    expect(records.input.filter(({ table }) => table === "Children").map(({ rows }) => rows)).toEqual([3, 3]);
  });

  test("sheets of one name that are laid out otherwise are settled apart", () => {
    const other = named(["Start", "Kid no.", "Birthday", "Room"], ["2025-03-01", "K9", "2024-01-01", "Blue"]);
    const three = oneWorkbook([
      {
        file: "NORTH.xlsx",
        workbook: book([...named(HEADINGS, ...kids("North", "K1")), ...rest, sheet("Skills", SKILLS)]),
      },
      { file: "RIVER.xlsx", workbook: book(other) },
    ]);
    const records = read(three, {}, decisionsOf(understand(three)));
    expect(records.input.filter(({ table }) => table === "Children").map(({ rows }) => rows)).toEqual([1, 1]);
    expect(records.children.ids).toEqual(["K1", "K9"]);
  });
});
