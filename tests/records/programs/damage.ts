import { specOfKind } from "../../../src/records/understanding/kinds";
import type { SheetTaken } from "../../../src/records/understanding/understanding";
import { CELL } from "../../../src/workbook/cells";
import { GridBuilder } from "../../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../../src/workbook/workbook";

/** A cell as it stands: its kind, and its number or text. */
type Raw = { readonly kind: number; readonly value: number | string } | null;
/** The place of the headings on a sheet: everything below them are records. */
type Taken = readonly SheetTaken[];
/** A change to a workbook that changes no record. `draw` gives a number from 0 to below its argument. */
export type Damage = (workbook: WorkbookIn, taken: Taken, draw: (below: number) => number) => WorkbookIn;

function cellsOf({ grid }: SheetIn): Raw[][] {
  return Array.from({ length: grid.rowCount }, (_, row) =>
    Array.from(grid.columns, (column): Raw => {
      const kind = column?.kinds[row] ?? CELL.empty;
      if (kind === CELL.empty) return null;
      const value = column?.values[row] as number;
      return { kind, value: kind === CELL.text ? (grid.strings[value] as string) : value };
    }),
  );
}

function sheetFrom(sheet: SheetIn, rows: readonly (readonly Raw[])[], down = 0, right = 0): SheetIn {
  const builder = new GridBuilder();
  rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (cell === null) return;
      if (typeof cell.value === "string") builder.text(r, c, cell.value);
      else builder.number(r, c, cell.value, cell.kind as typeof CELL.number);
    }),
  );
  const merged = sheet.merged.map((each) => ({
    top: each.top + down,
    bottom: each.bottom + down,
    left: each.left + right,
    right: each.right + right,
  }));
  return { ...sheet, grid: builder.build(), merged };
}

/** Row of the lowest heading, counted from 0; null where the sheet holds no records. */
function headerOf(sheet: SheetIn, taken: Taken): number | null {
  const own = taken.find((each) => each.sheet === sheet.name && each.is !== "not used");
  return own?.headerRows.at(-1) === undefined ? null : (own.headerRows.at(-1) as number) - 1;
}

const plain = (cell: Raw | undefined) =>
  String(cell?.value ?? "")
    .trim()
    .toLowerCase();
const text = (value: string): Raw => ({ kind: CELL.text, value });
const everySheet = (workbook: WorkbookIn, change: (sheet: SheetIn) => SheetIn): WorkbookIn => ({
  ...workbook,
  sheets: workbook.sheets.map(change),
});

function shuffled<T>(list: readonly T[], draw: (below: number) => number): T[] {
  const copy = [...list];
  for (let i = copy.length - 1; i > 0; i -= 1) {
    const j = draw(i + 1);
    [copy[i], copy[j]] = [copy[j] as T, copy[i] as T];
  }
  return copy;
}

export const DAMAGES: Readonly<Record<string, Damage>> = {
  "rows in another order": (workbook, taken, draw) =>
    everySheet(workbook, (sheet) => {
      const header = headerOf(sheet, taken);
      const rows = cellsOf(sheet);
      if (header === null) return sheet;
      return sheetFrom(sheet, [...rows.slice(0, header + 1), ...shuffled(rows.slice(header + 1), draw)]);
    }),
  "columns in another order": (workbook, taken, draw) =>
    everySheet(workbook, (sheet) => {
      if (sheet.merged.length > 0 || headerOf(sheet, taken) === null) return sheet;
      const rows = cellsOf(sheet);
      // Headings stand side by side: a column that has none stays where it is.
      const header = rows[headerOf(sheet, taken) as number] ?? [];
      const named = header.findIndex((cell) => cell === null);
      const width = named === -1 ? header.length : named;
      const order = shuffled(
        Array.from({ length: width }, (_, i) => i),
        draw,
      );
      return sheetFrom(
        sheet,
        rows.map((row) => row.map((cell, i) => (i < width ? (row[order[i] as number] ?? null) : cell))),
      );
    }),
  "blank rows between": (workbook, taken, draw) =>
    everySheet(workbook, (sheet) => {
      const header = headerOf(sheet, taken);
      if (header === null) return sheet;
      const gap = 2 + draw(6);
      return sheetFrom(
        sheet,
        cellsOf(sheet).flatMap((row, i) => (i > header && (i - header) % gap === 0 ? [[], row] : [row])),
      );
    }),
  "rows above and a column before": (workbook) =>
    everySheet(workbook, (sheet) =>
      sheetFrom(sheet, [[text("Printed for the board")], [], ...cellsOf(sheet).map((row) => [null, ...row])], 2, 1),
    ),
  "spaces and capitals in headings": (workbook, taken) =>
    everySheet(workbook, (sheet) => {
      const header = headerOf(sheet, taken);
      const rows = cellsOf(sheet).map((row, i) =>
        i === header
          ? row.map((cell): Raw => (typeof cell?.value === "string" ? text(` ${cell.value.toUpperCase()}  `) : cell))
          : row,
      );
      return sheetFrom(sheet, rows);
    }),
  "further columns of notes and phone numbers": (workbook, taken) =>
    everySheet(workbook, (sheet) => {
      const header = headerOf(sheet, taken);
      if (header === null) return sheet;
      const rows = cellsOf(sheet);
      const width = Math.max(...rows.map((row) => row.length));
      return sheetFrom(
        sheet,
        rows.map((row, i): Raw[] => {
          const wide = [...row, ...Array.from({ length: width - row.length }, () => null)];
          if (i === header) return [...wide, text("Home phone"), text("Remarks")];
          const isAgain = row.every((cell, at) => cell?.value === rows[header]?.[at]?.value);
          const isRecord = i > header && !isAgain && row.some((cell) => cell !== null);
          return isRecord && i % 3 === 0
            ? [...wide, text(`555-01${String(i % 100).padStart(2, "0")}`), text(`row ${i}: call before the visit`)]
            : wide;
        }),
      );
    }),
  "further sheets, in another order": (workbook, _, draw) => {
    const notes = sheetFrom({ name: "Meeting notes", merged: [], tables: [] } as unknown as SheetIn, [
      [text("Staff meeting")],
      [],
      [text("Order paper"), text("call the county")],
    ]);
    const counts = sheetFrom({ name: "Summary", merged: [], tables: [] } as unknown as SheetIn, [
      [text("Month"), text("Visits"), text("Calls")],
      [text("July"), { kind: CELL.number, value: 31 }, { kind: CELL.number, value: 12 }],
      [text("August"), { kind: CELL.number, value: 28 }, { kind: CELL.number, value: 9 }],
    ]);
    const empty = sheetFrom({ name: "Sheet9", merged: [], tables: [] } as unknown as SheetIn, []);
    return { ...workbook, sheets: shuffled([...workbook.sheets, notes, counts, empty], draw) };
  },
  "headings by another of their names": (workbook, taken, draw) =>
    everySheet(workbook, (sheet) => {
      const own = taken.filter((each) => each.sheet === sheet.name);
      const header = headerOf(sheet, taken);
      const names = new Map<string, string>();
      for (const { is, headings } of own) {
        for (const { cell, means, doubtful, skill, above } of headings) {
          const column = specOfKind(is)?.columns.find(({ heading }) => heading === means);
          if (column && skill === null && !doubtful && above === "")
            names.set(cell, [column.heading, ...column.synonyms][draw(column.synonyms.length + 1)] as string);
        }
      }
      const rows = cellsOf(sheet);
      const cellAt = (column: number) => `${String.fromCharCode(65 + column)}${(header ?? 0) + 1}`;
      const isHeader = (row: readonly Raw[]) =>
        row.length > 0 && row.every((cell, i) => plain(cell) === plain(rows[header ?? 0]?.[i]));
      return sheetFrom(
        sheet,
        rows.map((row) =>
          isHeader(row)
            ? row.map((cell, i) => (names.has(cellAt(i)) ? text(names.get(cellAt(i)) as string) : cell))
            : row,
        ),
      );
    }),
};
