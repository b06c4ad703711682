import { booleanArgument, objectArgument, textArgument } from "../protocol/arguments";
import { invalidArgument, RichError } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import { areaOfAddress, overlap } from "../workbook/area";
import type { MemoryTable } from "../workbook/memory-sheet";
import type { MemoryWorkbook } from "../workbook/memory-workbook";
import type { SheetOfWorkbook } from "./chart";
import type { MemoryRange } from "./memory-range";
import { rangeType } from "./range";

interface TableOfSheet extends SheetOfWorkbook {
  readonly table: MemoryTable;
}

const tableType = serverType<TableOfSheet>("Table", {
  id: ({ table }) => table.id,
  scalars: {
    Name: { get: ({ table }) => table.name, set: rename },
    ShowHeaders: { get: ({ table }) => table.showHeaders },
    ShowTotals: { get: ({ table }) => table.showTotals },
    Style: {
      get: ({ table }) => table.style,
      set: ({ table }, value) => {
        if (!/^TableStyle(Light|Medium|Dark)\d+$/.test(textArgument(value, "Table.Style"))) {
          throw invalidArgument("Table.Style");
        }
        table.style = value as string;
      },
    },
  },
  methods: {
    GetRange: ({ workbook, sheet, table }) => new Ref(rangeType, { workbook, sheet, area: table.area }),
  },
});

function rename({ workbook, table }: TableOfSheet, value: unknown): void {
  const name = textArgument(value, "Table.Name");
  if (!/^[A-Za-z_\\][A-Za-z0-9_.]{0,254}$/.test(name)) throw invalidArgument("Table.Name");
  if (workbook.isNameTaken(name)) throw new RichError("ItemAlreadyExists", "The name is taken.", "Table.Name");
  table.name = name;
}

export const tableCollectionType = serverType<SheetOfWorkbook>("TableCollection", {
  items: (of) => of.sheet.tables.map((table) => new Ref(tableType, { ...of, table })),
  item: (of, key) => {
    const table = of.sheet.tables.find((each) => each.id === key || each.name === key);
    return table ? new Ref(tableType, { ...of, table }) : null;
  },
  methods: {
    Add: (of, [address, hasHeaders]) => {
      const area =
        typeof address === "string"
          ? areaOfAddress(address)
          : objectArgument<MemoryRange>(address, "Range", "TableCollection.Add").area;
      if (!booleanArgument(hasHeaders, "TableCollection.Add")) throw invalidArgument("TableCollection.Add");
      refuseClash(of, area);
      const name = `Table${of.workbook.nextId("T")}`;
      const added = { name, area, style: "TableStyleMedium2", showHeaders: true, showTotals: false };
      return new Ref(tableType, { ...of, table: of.workbook.addTable(of.sheet, added) });
    },
  },
});

/** The tables of all sheets. office.js comes back to any table through this collection, by its id. */
export const workbookTablesType = serverType<MemoryWorkbook>("TableCollection", {
  items: (workbook) => allTables(workbook).map((each) => new Ref(tableType, each)),
  item: (workbook, key) => {
    const found = allTables(workbook).find(({ table }) => table.id === key || table.name === key);
    return found ? new Ref(tableType, found) : null;
  },
});

function allTables(workbook: MemoryWorkbook): TableOfSheet[] {
  return workbook.sheets.flatMap((sheet) => sheet.tables.map((table) => ({ workbook, sheet, table })));
}

/** Excel renames headings that are alike and writes over those that are no text; a table over another is refused. */
function refuseClash({ sheet }: SheetOfWorkbook, area: MemoryTable["area"]): void {
  const clashes = [...sheet.tables.map((each) => each.area), ...sheet.merged].some((each) => overlap(each, area));
  if (clashes || area.bottom === area.top) throw invalidArgument("TableCollection.Add");
  const headings = new Set<string>();
  for (let column = area.left; column <= area.right; column += 1) {
    const heading = sheet.valueAt(area.top, column);
    if (typeof heading !== "string" || headings.has(heading.toLowerCase()))
      throw invalidArgument("TableCollection.Add");
    headings.add(heading.toLowerCase());
  }
}
