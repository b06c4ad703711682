import { invalidArgument, RichError } from "../protocol/rich-error";
import { MemorySheet, type MemoryTable } from "./memory-sheet";

export interface MemoryWorkbookOptions {
  readonly name?: string;
  readonly dateSystem?: 1900 | 1904;
  /** What `values` holds for an empty cell: hosts differ. Its value type is "Empty" either way. */
  readonly emptyCells?: "" | null | 0;
}

/** A workbook in memory, for the tests of the Excel adapter. It computes no formula. */
export class MemoryWorkbook {
  readonly name: string;
  readonly dateSystem: 1900 | 1904;
  readonly emptyCells: "" | null | 0;
  readonly sheets: MemorySheet[] = [];
  /** Names of the workbook, each with the sheet that it leads to. */
  readonly names = new Map<string, { readonly sheet: MemorySheet | null; visible: boolean }>();
  isStructureProtected = false;
  activeSheet: MemorySheet | null = null;
  selection: string | null = null;
  /** Base64 of the workbooks that the add-in opened beside this one. */
  readonly opened: string[] = [];
  /** Requests that are still refused because a cell is being edited. */
  editingRequests = 0;
  /** Another workbook is in front: some members then fail. */
  isBehind = false;
  private made = 0;

  constructor({ name = "Book.xlsx", dateSystem = 1900, emptyCells = "" }: MemoryWorkbookOptions = {}) {
    this.name = name;
    this.dateSystem = dateSystem;
    this.emptyCells = emptyCells;
  }

  takesNothingWhileEditing(): boolean {
    if (this.editingRequests <= 0) return false;
    this.editingRequests -= 1;
    return true;
  }

  sheet(key: string): MemorySheet | undefined {
    const folded = key.toLowerCase();
    return this.sheets.find((each) => each.id === key || each.name.toLowerCase() === folded);
  }

  addSheet(name: string): MemorySheet {
    this.refuseBehind("Worksheets.Add");
    if (this.isStructureProtected) throw new RichError("AccessDenied", "The workbook is protected.", "Worksheets.Add");
    if (this.sheet(name)) throw new RichError("ItemAlreadyExists", "A sheet of this name exists.", "Worksheets.Add");
    if (!isSheetName(name)) throw invalidArgument("Worksheets.Add");
    const sheet = new MemorySheet(`{${this.nextId("SHEET")}}`, name);
    this.sheets.push(sheet);
    return sheet;
  }

  deleteSheet(sheet: MemorySheet): void {
    if (this.isBehind) throw new RichError("InvalidSelection", "The current selection is invalid.", "Worksheet.Delete");
    if (this.isStructureProtected)
      throw new RichError("AccessDenied", "The workbook is protected.", "Worksheet.Delete");
    const isLast = this.sheets.every((each) => each === sheet || each.visibility !== "Visible");
    if (isLast) throw new RichError("InvalidOperation", "A workbook needs a visible sheet.", "Worksheet.Delete");
    this.sheets.splice(this.sheets.indexOf(sheet), 1);
  }

  /** Source: OfficeDev/office-js#771, which names no code of its own for it. */
  refuseBehind(member: string): void {
    if (this.isBehind) throw new RichError("GeneralException", "There was an internal error.", member);
  }

  /** As Excel copies a sheet: its cells and custom properties go with it, and no name of the workbook leads to the copy. */
  copySheet(sheet: MemorySheet): MemorySheet {
    let copy = 2;
    while (this.sheet(`${sheet.name} (${copy})`)) copy += 1;
    const made = this.addSheet(`${sheet.name} (${copy})`);
    made.takeFrom(sheet);
    return made;
  }

  /** Saved, closed and opened again: every sheet has another id. */
  reopened(): MemoryWorkbook {
    const again = new MemoryWorkbook({ name: this.name, dateSystem: this.dateSystem, emptyCells: this.emptyCells });
    again.made = this.made + 100;
    const sheets = new Map(
      this.sheets.map((sheet) => {
        const other = again.addSheet(sheet.name);
        other.takeFrom(sheet);
        return [sheet, other];
      }),
    );
    this.names.forEach(({ sheet, visible }, name) =>
      again.names.set(name, { sheet: sheet && (sheets.get(sheet) ?? null), visible }),
    );
    return again;
  }

  addTable(sheet: MemorySheet, table: Omit<MemoryTable, "id">): MemoryTable {
    const added = { id: this.nextId("TABLE"), ...table };
    sheet.tables.push(added);
    return added;
  }

  isNameTaken(name: string): boolean {
    const folded = name.toLowerCase();
    const tables = this.sheets.flatMap((each) => each.tables.map((table) => table.name.toLowerCase()));
    return tables.includes(folded) || [...this.names.keys()].some((each) => each.toLowerCase() === folded);
  }

  nextId(kind: string): string {
    this.made += 1;
    return `${kind}-${this.made}`;
  }
}

function isSheetName(name: string): boolean {
  return name.length >= 1 && name.length <= 31 && !/[[\]:*?/\\]|^'|'$/.test(name) && name.toLowerCase() !== "history";
}
