import { booleanArgument, countArgument, objectArgument } from "../protocol/arguments";
import { invalidArgument, RichError } from "../protocol/rich-error";
import { Ref, serverType, type ServerType } from "../protocol/server-type";
import { type Area, overlap } from "../workbook/area";
import type { CellValue } from "../workbook/memory-sheet";
import type { MemoryRange } from "./memory-range";
import { rangeFormatType } from "./range-format";

/** More cells than Excel hands over at once. Source: Microsoft, "Resource limits and performance optimization". */
const MOST_CELLS_AT_ONCE = 5_000_000;

export const rangeType: ServerType = serverType<MemoryRange>("Range", {
  isTracked: true,
  scalars: {
    RowIndex: { get: ({ area }) => area.top },
    ColumnIndex: { get: ({ area }) => area.left },
    RowCount: { get: ({ area }) => area.bottom - area.top + 1 },
    ColumnCount: { get: ({ area }) => area.right - area.left + 1 },
    // As Excel writes an address: the name in quotes where it is not a plain word.
    Address: {
      get: ({ sheet, area }) => {
        const name = /^[A-Za-z]\w*$/.test(sheet.name) ? sheet.name : `'${sheet.name.replaceAll("'", "''")}'`;
        return `${name}!${area.top + 1}:${area.bottom + 1}`;
      },
    },
    Values: {
      get: (range) => cells(range, (value) => value ?? range.workbook.emptyCells),
      set: (range, value) => eachCell(range, value, "Range.Values", (r, c, each) => range.sheet.enter(r, c, each)),
    },
    ValueTypes: { get: (range) => cells(range, valueType) },
    NumberFormat: {
      get: (range) => cells(range, (_, row, column) => range.sheet.formatAt(row, column)),
      set: (range, value) =>
        eachCell(range, value, "Range.NumberFormat", (row, column, each) => {
          if (typeof each !== "string") throw invalidArgument("Range.NumberFormat");
          range.sheet.setFormat(row, column, each);
        }),
    },
  },
  objects: { Format: (range) => new Ref(rangeFormatType, range) },
  methods: {
    // Called by office.js itself for more than 1,500 cells.
    _ValidateArraySize: ({ area }, [rows, columns]) => {
      if (rows !== area.bottom - area.top + 1 || columns !== area.right - area.left + 1)
        throw wrongShape("Range.Values");
    },
    GetRow: (range, [index]) => {
      const row = range.area.top + countArgument(index, "Range.GetRow");
      return new Ref(rangeType, { ...range, area: { ...range.area, top: row, bottom: row } });
    },
    GetBoundingRect: (range, [other]) => {
      const { area } = objectArgument<MemoryRange>(other, "Range", "Range.GetBoundingRect");
      return new Ref(rangeType, { ...range, area: around(range.area, area) });
    },
    GetMergedAreasOrNullObject: (range) => {
      const areas = range.sheet.merged.filter((each) => overlap(each, range.area));
      return areas.length === 0 ? null : new Ref(rangeAreasType, { ...range, areas });
    },
    Merge: ({ sheet, area }, [across]) => {
      if (booleanArgument(across ?? false, "Range.Merge")) throw invalidArgument("Range.Merge");
      if (sheet.tables.some((table) => overlap(table.area, area))) throw invalidArgument("Range.Merge");
      if (!sheet.merged.some((each) => JSON.stringify(each) === JSON.stringify(area))) sheet.merged.push(area);
    },
    Clear: ({ sheet, area }, [what]) => {
      if (what !== "Contents") throw invalidArgument("Range.Clear");
      for (let row = area.top; row <= area.bottom; row += 1) {
        for (let column = area.left; column <= area.right; column += 1) sheet.enter(row, column, "");
      }
    },
    Select: (range) => {
      if (range.sheet.visibility !== "Visible") throw new RichError("InvalidOperation", "The sheet is hidden.");
      range.workbook.selection = JSON.stringify(range.area);
    },
  },
});

interface Areas extends MemoryRange {
  readonly areas: readonly Area[];
}

const rangeCollectionType = serverType<Areas>("RangeCollection", {
  items: (range) => range.areas.map((area) => new Ref(rangeType, { ...range, area })),
});

const rangeAreasType = serverType<Areas>("RangeAreas", {
  isTracked: true,
  objects: { Areas: (range) => new Ref(rangeCollectionType, range) },
});

type Mapped = (value: CellValue | undefined, row: number, column: number) => unknown;

function cells({ sheet, area }: MemoryRange, map: Mapped): unknown[][] | null {
  const columns = area.right - area.left + 1;
  const rows = area.bottom - area.top + 1;
  if (rows * columns > MOST_CELLS_AT_ONCE) return null;
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) =>
      map(sheet.valueAt(area.top + r, area.left + c), area.top + r, area.left + c),
    ),
  );
}

function valueType(value: CellValue | undefined): string {
  if (value === undefined) return "Empty";
  if (typeof value === "boolean") return "Boolean";
  if (typeof value === "number") return "Double";
  return /^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!|SPILL!)$/.test(value) ? "Error" : "String";
}

type Use = (row: number, column: number, value: unknown) => void;

/** One value for all cells, or an array of the range's own shape. */
function eachCell({ area }: MemoryRange, value: unknown, location: string, use: Use): void {
  const rows = area.bottom - area.top + 1;
  const columns = area.right - area.left + 1;
  if (Array.isArray(value)) {
    const isShaped = value.length === rows && value.every((row) => Array.isArray(row) && row.length === columns);
    if (!isShaped) throw wrongShape(location);
  }
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      use(area.top + row, area.left + column, Array.isArray(value) ? (value[row] as unknown[])[column] : value);
    }
  }
}

function wrongShape(location: string): RichError {
  const text = "The number of rows or columns in the input array doesn't match the size or dimensions of the range.";
  return new RichError("InvalidArgument", text, location);
}

function around(a: Area, b: Area): Area {
  return {
    top: Math.min(a.top, b.top),
    left: Math.min(a.left, b.left),
    bottom: Math.max(a.bottom, b.bottom),
    right: Math.max(a.right, b.right),
  };
}
