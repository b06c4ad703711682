import { booleanArgument, countArgument, objectArgument, textArgument } from "../protocol/arguments";
import { invalidArgument, RichError } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import { type Area, areaOf, areaOfAddress, WHOLE_SHEET } from "../workbook/area";
import type { MemorySheet } from "../workbook/memory-sheet";
import type { MemoryWorkbook } from "../workbook/memory-workbook";
import { chartCollectionType, type SheetOfWorkbook } from "./chart";
import type { MemoryRange } from "./memory-range";
import { pageLayoutType } from "./page-layout";
import { rangeType } from "./range";
import { tableCollectionType } from "./table";

const customPropertyType = serverType<{ sheet: MemorySheet; key: string }>("WorksheetCustomProperty", {
  scalars: {
    Key: { get: ({ key }) => key },
    Value: {
      get: ({ sheet, key }) => sheet.customProperties.get(key),
      set: ({ sheet, key }, value) =>
        sheet.customProperties.set(key, textArgument(value, "WorksheetCustomProperty.Value")),
    },
  },
});

const customPropertiesType = serverType<MemorySheet>("WorksheetCustomPropertyCollection", {
  methods: {
    Add: (sheet, [key, value]) => {
      const name = textArgument(key, "WorksheetCustomPropertyCollection.Add");
      if (name.length > 255) throw invalidArgument("WorksheetCustomPropertyCollection.Add");
      sheet.customProperties.set(name, textArgument(value, "WorksheetCustomPropertyCollection.Add"));
      return new Ref(customPropertyType, { sheet, key: name });
    },
    GetItemOrNullObject: (sheet, [key]) => {
      const name = textArgument(key, "WorksheetCustomPropertyCollection.GetItemOrNullObject");
      return sheet.customProperties.has(name) ? new Ref(customPropertyType, { sheet, key: name }) : null;
    },
  },
});

const freezePanesType = serverType<SheetOfWorkbook>("WorksheetFreezePanes", {
  methods: {
    FreezeAt: ({ workbook, sheet }, [range]) => {
      workbook.refuseBehind("WorksheetFreezePanes.FreezeAt");
      sheet.frozen = objectArgument<MemoryRange>(range, "Range", "WorksheetFreezePanes.FreezeAt").area;
    },
    FreezeRows: ({ workbook, sheet }, [count]) => {
      workbook.refuseBehind("WorksheetFreezePanes.FreezeRows");
      sheet.frozen = {
        top: 0,
        left: 0,
        bottom: countArgument(count, "WorksheetFreezePanes.FreezeRows") - 1,
        right: -1,
      };
    },
    FreezeColumns: ({ workbook, sheet }, [count]) => {
      workbook.refuseBehind("WorksheetFreezePanes.FreezeColumns");
      const right = countArgument(count, "WorksheetFreezePanes.FreezeColumns") - 1;
      sheet.frozen = { top: 0, left: 0, bottom: -1, right };
    },
  },
});

const worksheetType = serverType<SheetOfWorkbook>("Worksheet", {
  id: ({ sheet }) => sheet.id,
  scalars: {
    Id: { get: ({ sheet }) => sheet.id },
    Name: { get: ({ sheet }) => sheet.name },
    Visibility: { get: ({ sheet }) => sheet.visibility },
    ShowGridlines: { get: ({ sheet }) => sheet.showGridlines },
    // So is it called on the wire where office.js sets it.
    Gridlines: {
      set: ({ workbook, sheet }, value) => {
        workbook.refuseBehind("Worksheet.ShowGridlines");
        sheet.showGridlines = booleanArgument(value, "Worksheet.ShowGridlines");
      },
    },
  },
  objects: {
    Charts: (of) => new Ref(chartCollectionType, of),
    Tables: (of) => new Ref(tableCollectionType, of),
    PageLayout: ({ sheet }) => new Ref(pageLayoutType, sheet),
    FreezePanes: (of) => new Ref(freezePanesType, of),
    CustomProperties: ({ sheet }) => new Ref(customPropertiesType, sheet),
  },
  methods: {
    GetRange: (of, [address]) =>
      range(of, (address ?? null) === null ? WHOLE_SHEET : areaOfAddress(textArgument(address, "Worksheet.GetRange"))),
    GetRangeByIndexes: (of, args) => {
      const [top = 0, left = 0, rows = 0, columns = 0] = args.map((each) =>
        countArgument(each, "Worksheet.GetRangeByIndexes"),
      );
      return range(of, areaOf(top, left, rows, columns));
    },
    GetUsedRangeOrNullObject: (of, [valuesOnly]) => {
      // Cells that only have a look would make it larger; this workbook knows the values alone.
      if (valuesOnly !== true) throw new RichError("NotImplemented", "Used range with formats.");
      const area = of.sheet.usedArea();
      return area ? range(of, area) : null;
    },
    Activate: ({ workbook, sheet }) => {
      if (sheet.visibility !== "Visible") throw new RichError("InvalidOperation", "The sheet is hidden.");
      workbook.activeSheet = sheet;
    },
    Delete: ({ workbook, sheet }) => workbook.deleteSheet(sheet),
  },
});

function range(of: SheetOfWorkbook, area: Area): Ref {
  return new Ref(rangeType, { ...of, area } satisfies MemoryRange);
}

export const worksheetCollectionType = serverType<MemoryWorkbook>("WorksheetCollection", {
  items: (workbook) => workbook.sheets.map((sheet) => new Ref(worksheetType, { workbook, sheet })),
  item: (workbook, key) => found(workbook, key),
  methods: {
    Add: (workbook, [name]) => {
      const sheet = workbook.addSheet(textArgument(name, "WorksheetCollection.Add"));
      return new Ref(worksheetType, { workbook, sheet });
    },
    GetItemOrNullObject: (workbook, [key]) => found(workbook, key),
  },
});

function found(workbook: MemoryWorkbook, key: unknown): Ref | null {
  const sheet = workbook.sheet(textArgument(key, "WorksheetCollection.GetItem"));
  return sheet ? new Ref(worksheetType, { workbook, sheet }) : null;
}
