import { textArgument } from "../protocol/arguments";
import { RichError } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import type { MemoryWorkbook } from "../workbook/memory-workbook";
import { functionsType } from "./functions";
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
  readonly name: string;
}

const namedItemType = serverType<Named>("NamedItem", {
  id: ({ name }) => name,
  scalars: { Name: { get: ({ name }) => name } },
});

const namesType = serverType<MemoryWorkbook>("NamedItemCollection", {
  items: ({ names }) => [...names].map((name) => new Ref(namedItemType, { name })),
});

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
    // Source: OfficeDev/office-js issue 5319, while another workbook is in front.
    GetActiveCell: (workbook) => {
      if (workbook.isBehind) throw new RichError("InvalidSelection", "The current selection is invalid.");
      const sheet = workbook.activeSheet ?? workbook.sheets[0];
      if (!sheet) throw new RichError("ItemNotFound", "There is no sheet.");
      return new Ref(rangeType, { workbook, sheet, area: { top: 0, left: 0, bottom: 0, right: 0 } });
    },
  },
});
