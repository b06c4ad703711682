import { booleanArgument, objectArgument, textArgument } from "../protocol/arguments";
import { RichError } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import { WHOLE_SHEET } from "../workbook/area";
import type { MemoryWorkbook } from "../workbook/memory-workbook";
import { functionsType } from "./functions";
import type { MemoryRange } from "./memory-range";
import { rangeType } from "./range";
import { workbookTablesType } from "./table";
import { worksheetCollectionType } from "./worksheet";

const protectionType = serverType<MemoryWorkbook>("WorkbookProtection", {
  scalars: { Protected: { get: (workbook) => workbook.isStructureProtected } },
});

const createdType = serverType<{ workbook: MemoryWorkbook; base64: string }>("WorkbookCreated", {
  methods: { Open: ({ workbook, base64 }) => void workbook.opened.push(base64) },
});

const applicationType = serverType<MemoryWorkbook>("Application", {
  methods: {
    CreateWorkbook: (workbook, [base64]) =>
      new Ref(createdType, { workbook, base64: textArgument(base64, "Application.CreateWorkbook") }),
  },
});

interface Named {
  readonly workbook: MemoryWorkbook;
  readonly name: string;
}

const namedItemType = serverType<Named>("NamedItem", {
  id: ({ name }) => name,
  scalars: {
    Name: { get: ({ name }) => name },
    Visible: {
      set: ({ workbook, name }, value) => {
        const named = workbook.names.get(name);
        if (named) named.visible = booleanArgument(value, "NamedItem.Visible");
      },
    },
  },
  methods: {
    GetRangeOrNullObject: ({ workbook, name }) => {
      const sheet = workbook.names.get(name)?.sheet;
      if (!sheet || !workbook.sheets.includes(sheet)) return null;
      return new Ref(rangeType, { workbook, sheet, area: WHOLE_SHEET });
    },
    Delete: ({ workbook, name }) => void workbook.names.delete(name),
  },
});

const namesType = serverType<MemoryWorkbook>("NamedItemCollection", {
  items: (workbook) => [...workbook.names.keys()].map((name) => new Ref(namedItemType, { workbook, name })),
  item: (workbook, name) => namedItem(workbook, name),
  methods: {
    Add: (workbook, [name, range]) => {
      const text = textArgument(name, "NamedItemCollection.Add");
      if (workbook.isNameTaken(text)) throw new RichError("ItemAlreadyExists", "The name is taken.");
      const { sheet } = objectArgument<MemoryRange>(range, "Range", "NamedItemCollection.Add");
      workbook.names.set(text, { sheet, visible: true });
      return new Ref(namedItemType, { workbook, name: text });
    },
    GetItemOrNullObject: (workbook, [name]) => namedItem(workbook, name),
  },
});

function namedItem(workbook: MemoryWorkbook, name: unknown): Ref | null {
  const text = textArgument(name, "NamedItemCollection.GetItem");
  return workbook.names.has(text) ? new Ref(namedItemType, { workbook, name: text }) : null;
}

export const workbookType = serverType<MemoryWorkbook>("Workbook", {
  scalars: { Name: { get: (workbook) => workbook.name } },
  objects: {
    Worksheets: (workbook) => new Ref(worksheetCollectionType, workbook),
    Functions: (workbook) => new Ref(functionsType, workbook),
    Protection: (workbook) => new Ref(protectionType, workbook),
    Application: (workbook) => new Ref(applicationType, workbook),
    Names: (workbook) => new Ref(namesType, workbook),
    Tables: (workbook) => new Ref(workbookTablesType, workbook),
  },
  methods: {
    // Source: OfficeDev/office-js#5319, while another workbook is in front.
    GetActiveCell: (workbook) => {
      if (workbook.isBehind) throw new RichError("InvalidSelection", "The current selection is invalid.");
      const sheet = workbook.activeSheet ?? workbook.sheets[0];
      if (!sheet) throw new RichError("ItemNotFound", "There is no sheet.");
      return new Ref(rangeType, { workbook, sheet, area: { top: 0, left: 0, bottom: 0, right: 0 } });
    },
  },
});
