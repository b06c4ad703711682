import fc from "fast-check";
import { lineChangeOf, rangeAfter } from "../../../src/hosts/page/grid/line-changes";

const table = { top: 2, left: 1, bottom: 6, right: 4 };
const rows = (at: number, count: number) => ({ sheetId: "s", lines: "rows" as const, at, count });

/** By hand: rows 2 to 6. */
test.each([
  ["two rows above", rows(0, 2), { ...table, top: 4, bottom: 8 }],
  ["a row right at the top pushes it down", rows(2, 1), { ...table, top: 3, bottom: 7 }],
  ["a row inside makes it longer", rows(4, 1), { ...table, bottom: 7 }],
  ["a row right below is not in it", rows(7, 1), table],
  ["two rows above go", rows(0, -2), { ...table, top: 0, bottom: 4 }],
  ["its first row goes, with one above", rows(1, -2), { ...table, top: 1, bottom: 4 }],
  ["two inside go", rows(3, -2), { ...table, bottom: 4 }],
  ["its last goes, with one below", rows(6, -2), { ...table, bottom: 5 }],
  ["all of it goes", rows(1, -9), null],
  ["rows below go", rows(7, -3), table],
])("%s", (_, change, after) => expect(rangeAfter(table, change)).toEqual(after));

test("columns move it sideways", () => {
  expect(rangeAfter(table, { sheetId: "s", lines: "columns", at: 0, count: 1 })).toEqual({
    ...table,
    left: 2,
    right: 5,
  });
});

test("lines put in and taken out again leave a range where it was", () => {
  fc.assert(
    fc.property(fc.nat(20), fc.nat(9), fc.nat(20), fc.integer({ min: 1, max: 9 }), (top, height, at, count) => {
      const range = { top, left: 0, bottom: top + height, right: 3 };
      const after = rangeAfter(range, rows(at, count));
      expect(after && rangeAfter(after, rows(at, -count))).toEqual(range);
    }),
  );
});

test("a range after lines went holds the lines that are left of it", () => {
  fc.assert(
    fc.property(fc.nat(12), fc.nat(9), fc.nat(20), fc.integer({ min: 1, max: 9 }), (top, height, at, count) => {
      const left = Array.from({ length: 40 }, (_, line) => line).filter((line) => line < at || line >= at + count);
      const places = left.flatMap((line, place) => (line >= top && line <= top + height ? [place] : []));
      const after = rangeAfter({ top, left: 0, bottom: top + height, right: 0 }, rows(at, -count));
      expect(after && [after.top, after.bottom]).toEqual(places.length > 0 ? [places[0], places.at(-1)] : null);
    }),
  );
});

test("commands that move no cells are no change", () => {
  expect(lineChangeOf("sheet.mutation.set-range-values", {})).toBeNull();
  const range = { startRow: 3, endRow: 5, startColumn: 0, endColumn: 9 };
  expect(lineChangeOf("sheet.mutation.remove-rows", { subUnitId: "s", range })).toEqual(rows(3, -3));
});
