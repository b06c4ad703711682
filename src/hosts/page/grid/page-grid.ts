import { ICommandService, type ICellData, type IWorkbookData, type IWorksheetData, numfmt } from "@univerjs/core";
import {
  FormulaDataModel,
  type ISetRangeValuesMutationParams,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import type { CellRange } from "../../../workbook/workbook";
import type { SheetCells } from "../cells/read-sheet";
import { CELL_EDITOR } from "./cell-editor";
import { copySpilled } from "./copy-spilled";
import type { GridParts } from "./create-grid";
import { keepOut } from "./keep-out";
import { type LineChange, lineChangeOf } from "./line-changes";

export interface SelectedCell {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export interface SheetInGrid {
  readonly id: string;
  readonly name: string;
  readonly merged: readonly CellRange[];
}

/** The one workbook that the spreadsheet shows, in the few moves that this page needs of it. */
export class PageGrid {
  private unitId: string | null = null;
  private readonly letIn: () => void;

  constructor(private readonly parts: GridParts) {
    this.letIn = keepOut(parts.container).letIn;
  }

  /** Shows another workbook in place of the one before. */
  show(workbook: IWorkbookData): void {
    const { api } = this.parts;
    const isFirst = this.unitId === null;
    if (this.unitId !== null) api.disposeUnit(this.unitId);
    this.unitId = workbook.id;
    api.createWorkbook(workbook);
    // The clipboard of the grid comes with its first workbook.
    if (isFirst) copySpilled(this.parts.univer);
  }

  sheets(): SheetInGrid[] {
    return this.workbook()
      .getSheets()
      .map((sheet) => ({
        id: sheet.getSheetId(),
        name: sheet.getSheetName(),
        merged: sheet.getSheet().getMergeData().map(rangeOf),
      }));
  }

  cells(sheetId: string): SheetCells {
    const styles = this.workbook().getWorkbook().getStyles();
    const isDate = new Map<unknown, boolean>();
    const showsDate = (cell: ICellData) => {
      const known = isDate.get(cell.s);
      if (known !== undefined) return known;
      const pattern = styles.getStyleByCell(cell)?.n?.pattern;
      const dated = pattern !== undefined && pattern !== null && numfmt.isDateFormat(pattern);
      isDate.set(cell.s, dated);
      return dated;
    };
    return {
      own: this.sheet(sheetId).getSheet().getCellMatrix().getMatrix(),
      spilled: this.spilled(sheetId),
      showsDate,
    };
  }

  /** Adds a sheet after the last one. */
  add(name: string, sheet: Partial<IWorksheetData>): string {
    return this.workbook().insertSheet(name, { sheet }).getSheetId();
  }

  remove(sheetId: string): void {
    if (this.has(sheetId)) this.workbook().deleteSheet(sheetId);
  }

  has(sheetId: string): boolean {
    return this.workbook().getSheetBySheetId(sheetId) !== null;
  }

  /** Brings a range into sight. */
  select(sheetId: string, range: string): void {
    const workbook = this.workbook();
    const sheet = this.sheet(sheetId);
    workbook.setActiveSheet(sheet);
    const target = sheet.getRange(range);
    target.activate();
    sheet.scrollToCell(Math.max(target.getRow() - 3, 0), Math.max(target.getColumn() - 1, 0));
  }

  takeKeyboard(): void {
    const { container } = this.parts;
    this.letIn();
    container.scrollIntoView({ block: "nearest" });
    container.querySelector<HTMLElement>(CELL_EDITOR)?.focus({ preventScroll: true });
  }

  /** What someone is typing counts as typed. */
  async finishTyping(): Promise<void> {
    const workbook = this.workbook();
    if (workbook.isCellEditing()) await workbook.endEditingAsync(true);
  }

  /** Lets every formula be rewritten before it is set, however it came: typed, pasted or filled in. */
  onFormula(rewrite: (formula: string) => string): () => void {
    const { api } = this.parts;
    const subscription = api.addEvent(api.Event.BeforeCommandExecute, ({ id, params }) => {
      if (id === SetRangeValuesMutation.id) rewriteFormulas(params as ISetRangeValuesMutationParams, rewrite);
    });
    return () => subscription.dispose();
  }

  onSelect(listener: (cell: SelectedCell) => void): () => void {
    const { api } = this.parts;
    const subscription = api.addEvent(api.Event.SelectionChanged, ({ worksheet, selections }) => {
      const [first] = selections;
      if (first) listener({ sheetId: worksheet.getSheetId(), row: first.startRow, column: first.startColumn });
    });
    return () => subscription.dispose();
  }

  onLineChange(listener: (change: LineChange) => void): () => void {
    const { api } = this.parts;
    const subscription = api.addEvent(api.Event.CommandExecuted, ({ id, params }) => {
      const change = lineChangeOf(id, params);
      if (change) listener(change);
    });
    return () => subscription.dispose();
  }

  /** Tells of every sheet whose cells someone changes: by typing, pasting, filling in, or undoing. */
  onEdit(listener: (sheetId: string) => void): () => void {
    const commands = this.parts.univer.__getInjector().get(ICommandService);
    const subscription = commands.onCommandExecuted(({ id, params }, options) => {
      if (!EDITS.has(id) || options?.fromFormula) return;
      listener(String((params as { subUnitId?: unknown } | undefined)?.subUnitId ?? ""));
    });
    return () => subscription.dispose();
  }

  setDark(dark: boolean): void {
    this.parts.api.toggleDarkMode(dark);
  }

  private workbook() {
    const workbook = this.parts.api.getActiveWorkbook();
    if (!workbook) throw new RangeError("PageGrid: no workbook is shown yet");
    return workbook;
  }

  private sheet(sheetId: string) {
    const sheet = this.workbook().getSheetBySheetId(sheetId);
    if (!sheet) throw new RangeError("PageGrid: there is no such sheet");
    return sheet;
  }

  private spilled(sheetId: string): SheetCells["spilled"] {
    const model = this.parts.univer.__getInjector().get(FormulaDataModel);
    const cells = model.getArrayFormulaCellData()[this.unitId ?? ""]?.[sheetId];
    return (cells ?? {}) as SheetCells["spilled"];
  }
}

/** What changes cells, or where they stand. */
const EDITS: ReadonlySet<string> = new Set([
  SetRangeValuesMutation.id,
  "sheet.mutation.insert-row",
  "sheet.mutation.remove-rows",
  "sheet.mutation.insert-col",
  "sheet.mutation.remove-col",
  "sheet.mutation.move-range",
  "sheet.mutation.move-rows",
  "sheet.mutation.move-columns",
  "sheet.mutation.remove-sheet",
  "sheet.mutation.set-worksheet-name",
]);

function rewriteFormulas({ cellValue }: ISetRangeValuesMutationParams, rewrite: (formula: string) => string): void {
  for (const row of Object.values(cellValue ?? {})) {
    for (const cell of Object.values(row as Record<number, ICellData | null>)) {
      if (cell?.f) cell.f = rewrite(cell.f);
    }
  }
}

function rangeOf(range: { startRow: number; startColumn: number; endRow: number; endColumn: number }): CellRange {
  return { top: range.startRow, left: range.startColumn, bottom: range.endRow, right: range.endColumn };
}
