import fc from "fast-check";
import { fingerprintOf } from "../../src/records/fingerprint";
import { workbookOfRanges } from "../../src/records/ranges";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import { NO_DAY, type Records } from "../../src/records/records";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { dayFromIso } from "../../src/age/day";
import { type DateSystem, serialOf } from "../../src/age/serial";
import {
  book,
  bookWith,
  CHILDREN,
  clean,
  type Given,
  OBSERVATIONS,
  read,
  type Rows,
  settingsOf,
  sheet,
  SKILLS,
} from "./book";

/** Every look as text, in an order that does not depend on the sheet's. */
function looks({ children, skills, observations: o }: Records): string[] {
  return Array.from(o.child, (child, i) =>
    JSON.stringify([
      children.ids[child],
      skills[o.skill[i] as number]?.id,
      o.day[i],
      o.result[i],
      o.observers[o.observer[i] as number] ?? "",
      o.entered[i],
    ]),
  ).sort();
}

function kids({ children, enrolments: e }: Records): string[] {
  return Array.from(e.child, (child, i) =>
    JSON.stringify([
      children.ids[child],
      children.birth[child],
      children.gestationDays[child],
      e.enrolled[i],
      e.left[i],
      e.columns.map(({ heading, values }) => [heading, values[i]]).sort(),
    ]),
  ).sort();
}

const [HEAD, ...ROWS] = OBSERVATIONS as [readonly unknown[], ...Rows];
const MANY: Rows = [
  ...ROWS,
  ["A2", "walks", "2025-11-01", "not met", "T2", null],
  ["A2", "sits", "2024-10-05", "not met", "T1", null],
];
const BASE = read({ observations: [HEAD, ...MANY] });

const shuffled = (rows: Rows) => fc.shuffledSubarray([...rows], { minLength: rows.length, maxLength: rows.length });
const orderOf = (rows: Rows) => shuffled((rows[0] as readonly unknown[]).map((_, i) => [i]));
const reordered = (rows: Rows, order: Rows) => rows.map((row) => order.map(([column]) => row[column as number]));

test("the order of rows and columns, and the names of sheets, change nothing", () => {
  const [kidHead, ...kidRows] = CHILDREN as [readonly unknown[], ...Rows];
  fc.assert(
    fc.property(
      shuffled(MANY),
      shuffled(kidRows),
      orderOf(CHILDREN),
      orderOf(OBSERVATIONS),
      orderOf(SKILLS),
      fc.constantFrom("__proto__", "constructor", "Sheet1", "O'Brien! ü", "Skills"),
      (rows, own, a, b, c, name) => {
        const records = read(
          book([
            sheet(name, reordered([HEAD, ...rows], b)),
            sheet("2", reordered(SKILLS, c)),
            sheet("3", reordered([kidHead, ...own], a)),
          ]),
        );
        expect(looks(records)).toEqual(looks(BASE));
        expect(kids(records)).toEqual(kids(BASE));
        expect(records.skills).toEqual(BASE.skills);
        expect(records.findings).toEqual(BASE.findings);
      },
    ),
    { numRuns: 50 },
  );
});

test("blank rows anywhere change nothing but addresses", () => {
  const places = fc.array(fc.integer({ min: 1, max: 6 }), { maxLength: 5 });
  fc.assert(
    fc.property(places, (at) => {
      const rows: unknown[][] = [HEAD, ...MANY].map((row) => [...row]);
      at.forEach((place) => rows.splice(place, 0, []));
      expect(looks(read({ observations: rows }))).toEqual(looks(BASE));
    }),
    { numRuns: 30 },
  );
});

test("both date systems give the same days from their own serial numbers", () => {
  const dated = (rows: Rows, system: DateSystem) =>
    rows.map((row) =>
      row.map((cell) => {
        const day = typeof cell === "string" ? dayFromIso(cell) : null;
        return day === null ? cell : serialOf(day, system);
      }),
    );
  const of = (system: DateSystem) =>
    read(
      book([sheet("k", dated(CHILDREN, system)), sheet("o", dated(OBSERVATIONS, system)), sheet("s", SKILLS)], system),
    );
  const plain = read(bookWith({}));
  for (const records of [of(1900), of(1904)]) {
    expect(looks(records)).toEqual(looks(plain));
    expect(kids(records)).toEqual(kids(plain));
  }
});

test("rows used and left out always make up all rows, and errors never let a value through that is not one", () => {
  const cell = fc.oneof(
    fc.constantFrom(
      "A1",
      "a1 ",
      "A2",
      "sits",
      "Walks alone",
      "met",
      "not met",
      "lost",
      "#N/A",
      "",
      null,
      0,
      "Total",
      "2025-05-05",
      "05/06/2025",
      "17/06/2025",
      "1/2/25",
    ),
    fc.integer({ min: -5, max: 60_000 }),
    fc.double({ noNaN: true, min: 0, max: 60_000 }),
    fc.boolean(),
    fc.string({ maxLength: 6 }),
  );
  const rows = fc.array(fc.tuple(cell, cell, cell, cell, cell, cell), { maxLength: 30 });
  fc.assert(
    fc.property(rows, rows, (extra, own) => {
      const observations = [HEAD, ...ROWS, ...extra];
      const children = [...CHILDREN, ...own.map((row) => [...row, row[1], row[2]])];
      const records = readOrInput({ observations, children });
      for (const use of records.input) {
        expect(use.used + Object.values(use.leftOut).reduce((a, b) => a + b, 0)).toBe(use.rows);
      }
      if (records instanceof RecordsUnusable) return;
      const { observations: o } = records;
      expect(records.input[1]?.used).toBe(o.child.length);
      for (let i = 0; i < o.child.length; i += 1) {
        expect(o.day[i]).toBeGreaterThanOrEqual(records.children.birth[o.child[i] as number] as number);
        expect(records.skills[o.skill[i] as number]).toBeDefined();
      }
      expect(JSON.stringify([...records.enrolments.enrolled])).not.toMatch(/null/);
    }),
    { numRuns: 100 },
  );
});

/** The records, or what stopped their reading: both count the rows they saw. */
function readOrInput(given: Given): Records | RecordsUnusable {
  try {
    return read(given);
  } catch (error) {
    if (error instanceof RecordsUnusable) return error;
    throw error;
  }
}

test("no finding, message or decision carries the text of a cell of Children or Observations", () => {
  const canary = "Zebedee";
  const children = [
    ...CHILDREN,
    [canary, canary, canary, canary, canary, canary, canary, canary],
    [`${canary}2`, "2025-01-01", "x Zebedee", canary, canary, "2025-01-01", "2024-01-01"],
  ];
  const observations = [
    ...OBSERVATIONS,
    [canary, canary, canary, canary, canary, canary],
    ["A1", `${canary}s`, "2025-01-01", canary],
  ];
  const decisions = [{ kind: "same-child", child: "A1", alias: canary }] as const;
  for (const used of [[], [...decisions]]) {
    const records = read({ children, observations }, { asOf: "2026-09-30" }, used);
    expect(records.findings.length).toBeGreaterThan(5);
    expect(JSON.stringify([records.findings, records.input, records.decisions])).not.toMatch(/zebedee/i);
  }
});

test("ids are compared after NFKC, without outer and zero-width spaces, case folded; a number equals its text", () => {
  const rows = [
    HEAD,
    ["\u200bA1\u00a0", "ＳＩＴＳ", "2024-10-02", "MET", null, null],
    ["a１", "si\u200dts", "2024-10-03", " Not-Met ", null, null],
    [7, "sits", "2025-10-03", "not_yet", null, null],
    ["7", "straße", "2025-10-04", "met", null, null],
  ];
  const children = [...CHILDREN, [7, "2025-01-01", null, null, null, "2025-01-02"]];
  const skills = [...SKILLS, ["STRASSE", "Street", "cognitive", null, 30]];
  const records = read({ observations: rows, children, skills });
  expect([...records.observations.child]).toEqual([0, 0, 3, 3]);
  expect([...records.observations.skill]).toEqual([0, 0, 0, 3]);
  expect([...records.observations.result]).toEqual([2, 0, 0, 2]);
});

test("ids such as __proto__ are only ids", () => {
  const children = [...CHILDREN, ["__proto__", "2025-01-01", null, "constructor", null, "2025-01-02"]];
  const skills = [...SKILLS, ["hasOwnProperty", "toString", "__proto__", 1, 2]];
  const observations = [...OBSERVATIONS, ["__PROTO__", "tostring", "2025-06-01", "met", "valueOf", null]];
  const records = read({ children, skills, observations });
  expect(records.children.ids[3]).toBe("__proto__");
  expect(records.skills[3]).toMatchObject({ id: "hasOwnProperty", area: "__proto__" });
  expect(records.observations.observers).toContain("valueOf");
});

describe("ranges of a worksheet function", () => {
  const blanksAsZero = (rows: Rows) => [
    ...rows.map((row) => row.map((cell) => cell ?? 0)),
    rows[0]?.map(() => 0) ?? [],
  ];

  test("read as the same tables, also where blanks arrive as 0", () => {
    const workbook = workbookOfRanges(
      {
        children: blanksAsZero(CHILDREN),
        observations: blanksAsZero([HEAD, ...MANY]),
        skills: blanksAsZero(SKILLS),
      },
      1900,
    );
    const records = readRecords(workbook, settingsOf());
    expect(looks(records)).toEqual(looks(BASE));
    expect(kids(records)).toEqual(kids(BASE));
    expect(records.skills).toEqual(BASE.skills);
    expect(records.input.map(({ sheet: name, rows }) => [name, rows])).toEqual([
      ["Children", 3],
      ["Observations", 6],
      ["Skills", 3],
    ]);
  });

  test("a cell counted from the header as row 1", () => {
    const observations = [HEAD, ...ROWS, ["A1", "sits", "soon", "met"]];
    const records = readRecords(
      workbookOfRanges({ children: CHILDREN, observations, skills: SKILLS }, 1900),
      settingsOf(),
    );
    expect(records.findings.find(({ rule }) => rule === "date-unreadable")).toMatchObject({
      sheet: "Observations",
      cell: "C6",
    });
  });
});

describe("the fingerprint", () => {
  const of = (workbook: WorkbookIn) => fingerprintOf(workbook, readRecords(workbook, settingsOf()).input);
  const base = of(book(clean()));

  test("is 64 hexadecimal digits", () => {
    expect(base).toMatch(/^[0-9a-f]{64}$/);
  });

  test("is the same for the same cells, wherever they stand and whatever the sheets are called", () => {
    const [k, o, s] = clean() as [never, never, never];
    expect(of(book([s, o, k]))).toBe(base);
    const moved = sheet("x", [[], ["a title"], ...OBSERVATIONS.map((row) => [null, ...row]), [], [" "]]);
    expect(of(book([moved, sheet("y", CHILDREN), sheet("z", SKILLS)]))).toBe(base);
  });

  test("changes with any cell, and with the date system", () => {
    const seen = new Set([base, of(book(clean(), 1904))]);
    OBSERVATIONS.slice(1).forEach((row, r) =>
      row.forEach((_, c) => {
        const changed = OBSERVATIONS.map((own, i) =>
          i === r + 1 ? own.map((cell, j) => (j === c ? `${String(cell)}*` : cell)) : own,
        );
        seen.add(fingerprintOf(bookWith({ observations: changed }), read({}).input));
      }),
    );
    expect(seen.size).toBe(2 + 24);
  });

  test("does not confuse where one text ends and the next begins", () => {
    const input = [{ table: "Children", sheet: "s", address: "A1:B1", rows: 0, used: 0, leftOut: {} }];
    const print = (...row: unknown[]) => fingerprintOf(book([sheet("s", [row])]), input);
    expect(print("ab", "c")).not.toBe(print("a", "bc"));
    expect(print(1, null)).not.toBe(print(null, 1));
    expect(print("1", 1)).not.toBe(print(1, "1"));
  });

  test("changes with a cell past column Z", () => {
    const input = [{ table: "Children", sheet: "s", address: "Z1:AB1", rows: 0, used: 0, leftOut: {} }];
    const far = (cell: string) => fingerprintOf(book([sheet("s", [[...Array(25).fill(null), "y", "z", cell]])]), input);
    expect(far("a")).not.toBe(far("b"));
  });

  test("refuses a table that is not in the workbook", () => {
    const input = [{ table: "Children", sheet: "none", address: "A1:B1", rows: 0, used: 0, leftOut: {} }];
    expect(() => fingerprintOf(book(clean()), input)).toThrow(RangeError);
  });
});

test("referrals, signs and ratings stand as columns", () => {
  const day = (iso: string) => dayFromIso(iso) as number;
  const records = read(
    {
      more: [
        sheet("r", [
          [
            "Child",
            "Referred",
            "Area",
            "Reason",
            "From",
            "To",
            "Received",
            "Evaluated",
            "Eligible",
            "Plan",
            "Late reason",
          ],
          [
            "A1",
            "2025-01-10",
            "speech; Gross-Motor;speech; ",
            "quiet",
            "Clinic",
            "Team",
            null,
            "2025-02-01",
            "Y",
            "2025-03-10",
            "Program",
          ],
          ["A2", "2025-01-11", "sensory", null, "clinic ", null, "2025-01-12", null, "no"],
        ]),
        sheet("g", [
          ["Child", "Date", "Sign", "Seen", "Action"],
          ["A1", "2025-01-10", "Turns away", "YES", null],
        ]),
        sheet("t", [
          ["Child", "Outcome", "Entry date", "Entry rating", "Exit date", "Exit rating", "New since entry"],
          ["A1", "1", "2025-01-10", 3, "2026-12-01", 5, "yes"],
        ]),
      ],
    },
    { asOf: "2026-09-30" },
  );
  const { referrals, signs, ratings } = records;
  expect(referrals?.areas).toEqual([["speech", "gross motor"], ["sensory"]]);
  expect(referrals?.from).toEqual(["Clinic", "Clinic"]);
  expect([...(referrals?.received ?? [])]).toEqual([day("2025-01-10"), day("2025-01-12")]);
  expect([...(referrals?.evaluated ?? [])]).toEqual([day("2025-02-01"), NO_DAY]);
  expect([...(referrals?.eligible ?? [])]).toEqual([1, 0]);
  expect(referrals?.lateReason).toEqual(["program", ""]);
  expect(signs).toMatchObject({ seen: ["present"], action: Int32Array.of(NO_DAY) });
  expect(ratings).toMatchObject({
    exitDay: Int32Array.of(NO_DAY),
    exitRating: Uint8Array.of(0),
    newSinceEntry: Int8Array.of(-1),
  });
});
