import fc from "fast-check";
import { dayFromIso, isoOf } from "../../src/age/day";
import { serialOf } from "../../src/age/serial";
import { parseDateText } from "../../src/records/cells/date-text";
import { DATE_CODE } from "../../src/records/cells/date-codes";
import { type DateOptions, readDateColumn } from "../../src/records/cells/date-column";
import { CELL } from "../../src/workbook/cells";
import { GridBuilder } from "../../src/workbook/grid-builder";

const day = (iso: string) => dayFromIso(iso) as number;
const OPTIONS: DateOptions = { system: 1900, decided: null, monthFirst: null };

function column(cells: readonly (string | number | null)[], options: Partial<DateOptions> = {}) {
  const grid = new GridBuilder();
  cells.forEach((cell, row) => {
    if (typeof cell === "number") grid.number(row, 0, cell, CELL.date);
    else if (cell !== null) grid.text(row, 0, cell);
  });
  return readDateColumn(grid.build(), 0, Int32Array.from(cells.keys()), { ...OPTIONS, ...options });
}

/** ISO text of a day, or the name of its code. */
function shown(cells: readonly (string | number | null)[], options: Partial<DateOptions> = {}): string[] {
  const names = new Map(Object.entries(DATE_CODE).map(([name, code]) => [code, name] as const));
  return [...column(cells, options).days].map(
    (each) => (names.get(each as never) as string | undefined) ?? isoOf(each),
  );
}

test("serial numbers of the 1900 system, with its false 29 February", () => {
  // ECMA-376 Part 1, 18.17.4.1: 1 is 1 January 1900; 60 is a day that never was; 61 is 1 March 1900.
  expect(shown([1, 59, 60, 61, -1, 3e6])).toEqual([
    "1900-01-01",
    "1900-02-28",
    "unreadable",
    "1900-03-01",
    "unreadable",
    "unreadable",
  ]);
});

test("a serial of 0 is a blank in both systems", () => {
  expect(shown([0])).toEqual(["blank"]);
  expect(shown([0, 1], { system: 1904 })).toEqual(["blank", "1904-01-02"]);
});

test("ISO text and year-first text need no proof", () => {
  expect(shown(["2026-03-04", "2026/3/4", "2026.03.04", "2026-02-30", "2026-03-04T00:00:00"])).toEqual([
    "2026-03-04",
    "2026-03-04",
    "2026-03-04",
    "unreadable",
    "2026-03-04",
  ]);
});

test.each(["3 March 2026", "3-Mar-2026", "Mar 3, 2026", "3rd march 2026", "MARCH 3 2026", "03 Mar. 2026"])(
  "a month's name says which part is the day: %s",
  (text) => {
    expect(shown([text])).toEqual(["2026-03-03"]);
  },
);

test("Sept is September, and a word that is no month is no date", () => {
  expect(shown(["7 Sept 2025", "7 Sprout 2025"])).toEqual(["2025-09-07", "unreadable"]);
});

test.each(["13/02/2026", "13-02-2026", "13.02.2026"])("%s proves that its column has the day first", (proof) => {
  expect(shown([proof, "03/04/2026"])).toEqual(["2026-02-13", "2026-04-03"]);
});

test("a second part over 12 proves that the month comes first", () => {
  expect(shown(["02/13/2026", "03/04/2026"])).toEqual(["2026-02-13", "2026-03-04"]);
});

test("nothing proved: only a date that reads the same both ways, until monthFirst or a decision says", () => {
  const cells = ["03/04/2026", "05/05/2026"];
  expect(shown(cells)).toEqual(["orderUnknown", "2026-05-05"]);
  expect(shown(cells, { monthFirst: true })).toEqual(["2026-03-04", "2026-05-05"]);
  expect(shown(cells, { monthFirst: false })).toEqual(["2026-04-03", "2026-05-05"]);
  expect(shown(cells, { monthFirst: false, decided: "month first" })).toEqual(["2026-03-04", "2026-05-05"]);
});

test("monthFirst never beats what a column proves", () => {
  expect(shown(["13/02/2026", "03/04/2026"], { monthFirst: true })).toEqual(["2026-02-13", "2026-04-03"]);
});

test("texts that contradict each other stop one by one; ISO text and true dates stay", () => {
  expect(shown(["13/02/2026", "02/13/2026", "04/04/2026", "2026-01-05", 46_100])).toEqual([
    "orderContradicts",
    "orderContradicts",
    "orderContradicts",
    "2026-01-05",
    "2026-03-19",
  ]);
});

test("true dates all up to day 12 and text dates all over 12: the column is swapped and stops", () => {
  const cells = [serialOf(day("2026-02-03"), 1900), serialOf(day("2026-05-12"), 1900), "13/02/2026", "28/05/2026"];
  expect(column(cells).swapped).toBe(true);
  expect(shown(cells)).toEqual(["swapped", "swapped", "swapped", "swapped"]);
  expect(column([...cells, serialOf(day("2026-05-13"), 1900)]).swapped).toBe(false);
  expect(column([...cells, "04/05/2026"]).swapped).toBe(false);
  expect(column(cells.slice(2)).swapped).toBe(false);
  expect(shown(cells, { decided: "day first" })).toEqual(["2026-02-03", "2026-05-12", "2026-02-13", "2026-05-28"]);
});

test("the same sign with the month first", () => {
  expect(column([serialOf(day("2026-03-02"), 1900), "02/13/2026"]).swapped).toBe(true);
});

test("two-digit years are told apart from what is no date", () => {
  expect(shown(["13/02/26", "3-Mar-26", "Mar 3, '26", "soon", "12/2026"])).toEqual([
    "twoDigitYear",
    "twoDigitYear",
    "twoDigitYear",
    "unreadable",
    "unreadable",
  ]);
});

test("two-digit years are of this century once a person said so, in the order that the column proves", () => {
  const read = (texts: string[]) => [...column(texts, { shortYears: true }).days].map((day) => isoOf(day));
  expect(read(["13/02/26", "3-Mar-26", "Mar 3, '26", "04/02/2026"])).toEqual([
    "2026-02-13",
    "2026-03-03",
    "2026-03-03",
    "2026-02-04",
  ]);
  expect(read(["3/14/24", "3/4/24"])).toEqual(["2024-03-14", "2024-03-04"]);
});

test("a time of day is dropped and told", () => {
  const read = column([46_100.5, "2026-03-19 09:30", "2026-03-19 00:00"]);
  expect([...read.days].map(isoOf)).toEqual(["2026-03-19", "2026-03-19", "2026-03-19"]);
  expect(read.timed).toEqual([0, 1]);
});

test("every day written in any of the ways is read as that day, in both date systems", () => {
  fc.assert(
    fc.property(fc.integer({ min: day("1905-01-01"), max: day("2199-12-31") }), (each) => {
      const iso = isoOf(each);
      const [year, month, date] = iso.split("-");
      expect(shown([serialOf(each, 1900)])).toEqual([iso]);
      expect(shown([serialOf(each, 1904)], { system: 1904 })).toEqual([iso]);
      expect(shown([iso, `${date}/${month}/${year}`], { monthFirst: false })).toEqual([iso, iso].slice(0, 2));
      expect(parseDateText(`${Number(month)}-${date}-${year}`)).toMatchObject({ kind: "parts" });
    }),
  );
});
