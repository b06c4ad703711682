import { CELL } from "../../src/workbook/cells";
import { GridBuilder } from "../../src/workbook/grid-builder";
import type { CellRange, SheetIn } from "../../src/workbook/workbook";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import { TABLES } from "../../src/records/tables";
import { headingKeys } from "../../src/records/headings/headings";
import {
  book,
  bookWith,
  CHILDREN,
  clean,
  listed,
  OBSERVATIONS,
  read,
  type Rows,
  serial,
  settingsOf,
  sheet,
  SKILLS,
  unusable,
} from "./book";

/** What the records say, apart from where it stood. */
function essence(records: ReturnType<typeof read>) {
  const observations = { ...records.observations, places: undefined };
  const input = records.input.map(({ table, rows, used }) => ({ table, rows, used }));
  return { ...records, observations, findings: [], input };
}

const CLEAN = essence(read(book(clean())));

/** Two blocks of rows side by side, with columns between them left empty. */
function beside(left: Rows, right: Rows, gap = 1): unknown[][] {
  const width = Math.max(...left.map((row) => row.length)) + gap;
  const height = Math.max(left.length, right.length);
  return Array.from({ length: height }, (_, i) => [
    ...Array.from({ length: width }, (_unused, c) => left[i]?.[c] ?? null),
    ...(right[i] ?? []),
  ]);
}

function indented(rows: Rows, down: number, right: number): unknown[][] {
  const blank = Array.from({ length: down }, () => []);
  return [...blank, ...rows.map((row) => [...Array.from({ length: right }, () => null), ...row])];
}

describe("tables are found", () => {
  test("wherever they stand on a sheet", () => {
    const [kids, looks, list] = [CHILDREN, OBSERVATIONS, SKILLS].map((rows, i) => indented(rows, 5 + i, 3));
    const records = read(book([sheet("a", kids as Rows), sheet("b", looks as Rows), sheet("c", list as Rows)]));
    expect(essence(records)).toEqual(CLEAN);
    expect(records.input[0]?.address).toBe("D6:K9");
  });

  test("side by side on one sheet, also without a gap", () => {
    const three = beside(beside(CHILDREN, OBSERVATIONS), SKILLS);
    expect(essence(read(book([sheet("all", three)])))).toEqual(CLEAN);
    const tight = beside(SKILLS, OBSERVATIONS, 0);
    expect(essence(read(book([sheet("k", CHILDREN), sheet("all", tight)])))).toEqual(CLEAN);
  });

  test("below each other on one sheet, with a title above each", () => {
    const stack = [["Children"], ...CHILDREN, [], ["Observations"], ...OBSERVATIONS, ["Skills"], ...SKILLS];
    const records = read(book([sheet("all", stack)]));
    expect(listed(records)).toEqual([]);
    expect(essence(records)).toEqual(CLEAN);
  });

  test("under a title and a note, which are no headings", () => {
    const rows = [["Alder Fork"], ["one row per child and enrolment"], ...CHILDREN];
    expect(essence(read(bookWith({ children: rows })))).toEqual(CLEAN);
  });

  test("as Excel tables, whatever else stands on the sheet", () => {
    const range: CellRange = { top: 0, left: 0, bottom: 3, right: 7 };
    const rows = [...CHILDREN, ["a note below the table"]];
    const kids = sheet("k", rows, { tables: [{ name: "tblChildren", range, headerRow: true, totalsRow: false }] });
    const [, looks, list] = clean() as [SheetIn, SheetIn, SheetIn];
    const records = read(book([kids, looks, list]));
    expect(listed(records)).toEqual([]);
    expect(essence(records)).toEqual(CLEAN);
  });

  test("as Excel tables with a totals row, which is left out and listed", () => {
    const range: CellRange = { top: 0, left: 0, bottom: 4, right: 7 };
    const rows = [...CHILDREN, [null, null, 3]];
    const kids = sheet("k", rows, { tables: [{ name: "Children", range, headerRow: true, totalsRow: true }] });
    const [, looks, list] = clean() as [SheetIn, SheetIn, SheetIn];
    expect(listed(read(book([kids, looks, list])))).toEqual(["total-row A5"]);
  });

  test("in several pieces, which are read as one", () => {
    const [head, ...rows] = OBSERVATIONS as [readonly unknown[], ...Rows];
    const pieces = [sheet("q1", [head, ...rows.slice(0, 2)]), sheet("q2", [head, ...rows.slice(2)])];
    const records = read(book([sheet("k", CHILDREN), ...pieces, sheet("s", SKILLS)]));
    expect([...records.observations.child]).toEqual([0, 0, 1, 2]);
    expect(
      records.input.filter(({ table }) => table === "Observations").map(({ sheet: name, rows: n }) => [name, n]),
    ).toEqual([
      ["q1", 2],
      ["q2", 2],
    ]);
  });

  test("through blank rows", () => {
    const [head, first, ...rest] = CHILDREN as [readonly unknown[], readonly unknown[], ...Rows];
    const records = read(bookWith({ children: [head, first, [], [null, " "], [0, 0, 0], ...rest] }));
    expect(essence(records)).toEqual(CLEAN);
    expect(listed(records)).toEqual([]);
  });
});

describe("headings", () => {
  test("match through case, spaces, accents and punctuation, and by synonyms", () => {
    const head = [
      " CHILD-id ",
      "D.O.B.",
      "Gestational  age",
      "Centre",
      "Provider",
      "Start date",
      "Discharge date",
      "Household",
    ];
    expect(essence(read(bookWith({ children: [head, ...CHILDREN.slice(1)] }))).children).toEqual(CLEAN.children);
    const accents = ["Chíld", "Birth\u00a0dáte", ...(CHILDREN[0] as string[]).slice(2)];
    expect(essence(read(bookWith({ children: [accents, ...CHILDREN.slice(1)] })))).toEqual(CLEAN);
  });

  test("no synonym stands for two columns of one table", () => {
    for (const { columns } of TABLES) {
      const keys = columns.flatMap(headingKeys);
      expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
    }
  });

  test("a column's own name beats a synonym, which is then a column of its own", () => {
    const rows = CHILDREN.map((row, i) => [...row, i === 0 ? "Centre" : `Room ${i}`]);
    const { enrolments } = read(bookWith({ children: rows }));
    expect(enrolments.columns.map(({ heading }) => heading)).toEqual(["Site", "Therapist", "Centre"]);
  });

  test("Site under another heading is called Site, and remembers its own", () => {
    const head = (CHILDREN[0] as string[]).map((each) => (each === "Site" ? "Location" : each));
    const [site] = read(bookWith({ children: [head, ...CHILDREN.slice(1)] })).enrolments.columns;
    expect(site).toMatchObject({ heading: "Site", written: "Location" });
  });

  test("one that matches two columns is listed at both, and neither is read", () => {
    const rows = CHILDREN.map((row, i) => [...row, i === 0 ? "site" : "West"]);
    const records = read(bookWith({ children: rows }));
    expect(listed(records)).toEqual(["heading-twice D1", "heading-twice I1"]);
    expect(records.enrolments.columns.map(({ heading }) => heading)).toEqual(["Therapist"]);
  });

  test("a needed one that matches two columns stops the table", () => {
    const rows = OBSERVATIONS.map((row, i) => [...row, i === 0 ? "Date" : "2026-01-01"]);
    const error = unusable({ observations: rows });
    expect(error.table).toBe("Observations");
    expect(listed(error)).toEqual(["heading-twice C1", "heading-twice G1"]);
  });

  test("a needed one that is not known is listed at its cell, and a decision settles it", () => {
    const rows = [["Child", "Skill", "When", "Result"], ...OBSERVATIONS.slice(1).map((row) => row.slice(0, 4))];
    const error = unusable({ observations: rows });
    expect(error.message).toMatch(/^Observations: in Looks!A1:D1 the heading Date was not found/);
    expect(listed(error)).toEqual(["heading-unknown C1"]);
    const decision = { kind: "heading", table: "Observations", heading: "when", means: "Date" } as const;
    const records = read(bookWith({ observations: rows }), {}, [decision]);
    expect([...records.observations.day]).toEqual([...CLEAN.observations.day]);
    expect(records.decisions).toEqual(["A heading of Observations is read as Date (correction 1)."]);
  });

  test("in two rows, merged, are read together", () => {
    const rows = [
      ["Child", "Outcome", "Entry", null, "Exit", null, "New since entry"],
      [null, null, "date", "rating", "date", "rating", null],
      ["A1", "1", "2025-01-10", 3, "2026-01-10", 5, "yes"],
    ];
    const tall = [0, 1, 6].map((column) => ({ top: 0, left: column, bottom: 1, right: column }));
    const wide = [2, 4].map((column) => ({ top: 0, left: column, bottom: 0, right: column + 1 }));
    const records = read(bookWith({ more: [sheet("r", rows, { merged: [...tall, ...wide] })] }));
    expect(records.ratings).toMatchObject({
      outcome: ["1"],
      entryRating: Uint8Array.of(3),
      exitRating: Uint8Array.of(5),
    });
    expect(records.input.at(-1)).toMatchObject({ table: "Ratings", address: "A1:G3", rows: 1, used: 1 });
  });

  test("under a merged row of groups", () => {
    const rows = [[null, "Birth", null, "Where and who"], ...CHILDREN];
    const merged = [
      { top: 0, left: 1, bottom: 0, right: 2 },
      { top: 0, left: 3, bottom: 0, right: 4 },
    ];
    const kids = sheet("k", rows, { merged });
    const [, looks, list] = clean() as [SheetIn, SheetIn, SheetIn];
    expect(essence(read(book([kids, looks, list])))).toEqual(CLEAN);
  });

  test("further columns of Children group under their own headings, whatever they are called", () => {
    const rows = CHILDREN.map((row, i) => [...row, ["__proto__", "a", "A ", "b"][i], ["constructor", 1, 2, "2"][i]]);
    const records = read(bookWith({ children: rows }));
    expect(records.enrolments.columns.slice(2)).toEqual([
      { heading: "__proto__", values: ["a", "a", "b"] },
      { heading: "constructor", values: ["1", "2", "2"] },
    ]);
  });
});

describe("wide sheets", () => {
  const wide: Rows = [
    ["Child", "sits", "Walks alone"],
    ["A1", "2024-12-02", null],
    ["A3", serial("2025-08-01"), serial("2026-02-10")],
  ];
  const wideBook = (rows: Rows) => book([sheet("k", CHILDREN), sheet("w", rows), sheet("s", SKILLS)]);

  test("with dates become looks with the skill met", () => {
    const records = read(wideBook(wide));
    expect(listed(records)).toEqual([]);
    expect(records.input[1]).toMatchObject({ table: "Observations", rows: 3, used: 3, leftOut: {} });
    expect([...records.observations.skill]).toEqual([0, 0, 2]);
    expect([...records.observations.exact]).toEqual([0, 0, 0]);
    expect([...read(wideBook(wide), { metDates: "exact" }).observations.exact]).toEqual([1, 1, 1]);
  });

  test("with result words need a column Date", () => {
    const words = [
      ["Child", "sits"],
      ["A1", "met"],
      ["A3", "Not yet"],
    ];
    expect(unusable(wideBook(words)).message).toMatch(/result without a date: 2/);
    const dated = [
      ["Child", "Date", "sits"],
      ["A1", "2024-12-02", "met"],
      ["A3", "2025-04-01", "Not yet"],
    ];
    const records = read(wideBook(dated));
    expect([...records.observations.result]).toEqual([2, 0]);
    expect(listed(records)).toEqual([]);
    const mixed = [
      ["Child", "sits"],
      ["A1", "met"],
      ["A3", "2025-04-01"],
    ];
    expect(listed(read(wideBook(mixed)))).toEqual(["result-needs-date B2"]);
  });

  test("list the looks of a column that no skill is called by, and leave other columns alone", () => {
    const rows = [
      ["Child", "sits", "hops", "Notes"],
      ["A1", "2024-12-02", "2025-12-02", "shy at first"],
      ["A3", "2025-04-01", null, "2025-04-01 and before"],
    ];
    const records = read(wideBook(rows));
    expect(listed(records)).toEqual(["heading-not-read D1", "skill-unknown C2"]);
    expect(records.input[1]).toMatchObject({ rows: 3, used: 2, leftOut: { "skill not in Skills": 1 } });
  });

  test("list each filled cell that cannot be used", () => {
    const rows = [
      ["Child", "sits", "walks"],
      ["A1", "soon", "2025-08-01"],
      ["A9", "2025-04-01", "2025-08-01"],
    ];
    const records = read(wideBook(rows));
    expect(listed(records)).toEqual(["result-unknown B2", "child-unknown A3"]);
    expect(records.input[1]).toMatchObject({ rows: 4, used: 1 });
  });

  test("may be the table of children itself", () => {
    const rows = CHILDREN.map((row, i) => [...row, ["Sits without support", "2024-12-02", null, "2025-08-01"][i]]);
    const records = read(book([sheet("k", rows), sheet("s", SKILLS)]));
    expect([...records.observations.child]).toEqual([0, 2]);
    expect(records.enrolments.columns.map(({ heading }) => heading)).toEqual(["Site", "Therapist"]);
    expect(records.input.map(({ table, rows: n }) => [table, n])).toEqual([
      ["Children", 3],
      ["Observations", 2],
      ["Skills", 3],
    ]);
  });

  test("with birth dates beside are no second table of children", () => {
    const rows = [
      ["Child", "Birth date", "sits"],
      ["A1", "2024-03-31", "2024-12-02"],
    ];
    const records = read(wideBook(rows));
    expect(records.input.map(({ table }) => table)).toEqual(["Children", "Observations", "Skills"]);
    expect(listed(records)).toEqual(["heading-not-read B1"]);
  });

  test("under a merged row of areas", () => {
    const rows = [
      ["Child", "Gross motor", null],
      [null, "sits", "walks"],
      ["A3", "2025-08-01", "2026-02-10"],
    ];
    const merged = [
      { top: 0, left: 0, bottom: 1, right: 0 },
      { top: 0, left: 1, bottom: 0, right: 2 },
    ];
    const records = read(book([sheet("k", CHILDREN), sheet("w", rows, { merged }), sheet("s", SKILLS)]));
    expect([...records.observations.skill]).toEqual([0, 2]);
  });
});

describe("cells that a spreadsheet spoils", () => {
  function spoiled(column: number, kind: typeof CELL.date | typeof CELL.noCachedValue, table: "k" | "l"): SheetIn[] {
    const sheets = clean();
    const index = table === "k" ? 0 : 1;
    const rows = table === "k" ? CHILDREN : OBSERVATIONS;
    const builder = new GridBuilder();
    rows.forEach((row, r) =>
      row.forEach((value, c) => {
        if (r === 1 && c === column) builder.number(r, c, 46_109, kind);
        else if (typeof value === "number") builder.number(r, c, value);
        else if (typeof value === "string") builder.text(r, c, value);
      }),
    );
    sheets[index] = { ...(sheets[index] as SheetIn), grid: builder.build() };
    return sheets;
  }

  test("a gestation that became a date", () => {
    const records = read(book(spoiled(2, CELL.date, "k")));
    expect(listed(records)).toEqual(["gestation-is-date C2"]);
    expect(records.children.gestationDays[0]).toBe(0);
    expect(records.counts.gestationNotRecorded).toBe(1);
  });

  test("an id that became a date", () => {
    expect(listed(read(book(spoiled(1, CELL.date, "l"))))).toEqual(["id-is-date B2"]);
  });

  test("a formula whose result the file does not hold", () => {
    expect(listed(read(book(spoiled(3, CELL.noCachedValue, "l"))))).toEqual(["cell-no-value D2"]);
    expect(listed(read(book(spoiled(4, CELL.noCachedValue, "l"))))).toEqual(["cell-not-read E2"]);
  });

  test("a date column with day and month swapped stops, and says so for the column", () => {
    const rows = OBSERVATIONS.map((row, i) =>
      i === 0 ? row : [...row.slice(0, 2), i === 1 ? serial("2024-12-10") : `${12 + i}/10/2025`, row[3]],
    );
    const error = unusable({ observations: rows });
    expect(listed(error)).toEqual(["date-column-swapped C2:C5"]);
    expect(error.message).toMatch(/^Observations: none of its rows can be used \(day and month seem swapped: 4\)/);
    const settled = { kind: "date-order", table: "Observations", column: "date", order: "day first" } as const;
    expect(read({ observations: rows }, {}, [settled]).observations.day).toHaveLength(4);
  });
});

test("a swapped column of birth dates is one finding, and stops the children", () => {
  const rows = CHILDREN.map((row, i) =>
    i === 0 ? row : [row[0], i === 1 ? serial("2024-05-03") : `${12 + i}/05/2024`],
  );
  const error = unusable({ children: rows });
  expect(listed(error)).toEqual(["date-column-swapped B2:B4"]);
});

test("a swapped column that may be blank is one warning, and its rows are used", () => {
  const rows = OBSERVATIONS.map((row, i) =>
    i === 0 ? row : [...row.slice(0, 5), i === 1 ? serial("2024-11-12") : `${12 + i}/12/2026`],
  );
  const records = read({ observations: rows });
  expect(listed(records)).toEqual(["date-column-swapped F2:F5"]);
  expect(records.findings.map(({ severity }) => severity)).not.toContain("error");
  expect(records.observations.day).toHaveLength(4);
});

test("a group cell that cannot be read is listed", () => {
  const rows = CHILDREN.map((row, i) => [...row, ["Room", "#N/A", "a", "a"][i]]);
  expect(listed(read({ children: rows }))).toEqual(["cell-not-read I2"]);
});

test("a table without its own header row is read by the headings above it", () => {
  const range: CellRange = { top: 1, left: 0, bottom: 3, right: 7 };
  const kids = sheet("k", CHILDREN, { tables: [{ name: "Table1", range, headerRow: false, totalsRow: false }] });
  const [, looks, list] = clean() as [SheetIn, SheetIn, SheetIn];
  expect(essence(read(book([kids, looks, list])))).toEqual(CLEAN);
});

describe("what stops the reading", () => {
  test.each([
    ["Children", [sheet("l", OBSERVATIONS), sheet("s", SKILLS)]],
    ["Observations", [sheet("k", CHILDREN), sheet("s", SKILLS)]],
    ["Skills", [sheet("k", CHILDREN), sheet("l", OBSERVATIONS)]],
  ])("%s is missing", (table, sheets) => {
    expect(unusable(book(sheets)).table).toBe(table);
  });

  test("an empty workbook", () => {
    expect(() => readRecords(book([]), settingsOf())).toThrow(RecordsUnusable);
  });

  test("no row of a needed table can be used", () => {
    const rows = CHILDREN.map((row, i) => (i === 0 ? row : [row[0], "unknown"]));
    expect(unusable({ children: rows })).toMatchObject({ table: "Children" });
    expect(unusable({ children: rows }).findings).toHaveLength(3);
  });

  test("headings alone do not", () => {
    const records = read({
      children: CHILDREN.slice(0, 1),
      observations: OBSERVATIONS.slice(0, 1),
      skills: SKILLS.slice(0, 1),
    });
    expect(
      records.findings.filter(({ rule }) => rule === "table-empty").map(({ severity, cell }) => [severity, cell]),
    ).toEqual([
      ["note", "A1:H1"],
      ["note", "A1:F1"],
      ["note", "A1:J1"],
    ]);
  });

  test("rows that only lie after the as-of date do not", () => {
    expect(read({}, { asOf: "2024-09-15" }).observations.day).toHaveLength(0);
  });

  test("a report sheet of our own beside the records does not", () => {
    const report = sheet("met-by-band", [
      ["Skill", "Area", "Band", "Children"],
      ["sits", "gross motor", "6 to <9 months", 3],
    ]);
    const own = sheet("skill-status", [
      ["Child", "Skill", "Area", "Age (months)", "Box"],
      ["A1", "sits", "gross motor", 7.5, "met"],
    ]);
    const records = read({ more: [report, own] });
    expect(essence(records)).toEqual(CLEAN);
  });
});

test("no column Enrolled and none of leaving: a warning each, and children are followed from their first look", () => {
  const rows = CHILDREN.map((row) => row.slice(0, 5));
  const records = read({ children: rows });
  expect(listed(records)).toEqual(["column-not-found A1:E1", "column-not-found A1:E1"]);
  expect(records.enrolments.enrolled[0]).toBe(Math.min(...[...records.observations.day].slice(0, 2)));
});

test("a heading past an empty column is noted", () => {
  const rows = CHILDREN.map((row, i) => [...row.slice(0, 6), null, ["Left", null, "2026-01-15", null][i]]);
  expect(listed(read({ children: rows }))).toEqual(["column-not-found A1:F1", "heading-beside H1"]);
});
