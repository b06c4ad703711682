import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { CellMatrix } from "../../../src/hosts/page/cells/read-sheet";
import type { LineChange } from "../../../src/hosts/page/grid/line-changes";
import type { PageGrid } from "../../../src/hosts/page/grid/page-grid";

interface Kept {
  readonly id: string;
  name: string;
  readonly cells: Record<number, Record<number, ICellData>>;
}

/** The moves of the grid that a page's workbook makes, over plain data. */
export class MemoryGrid {
  kept: Kept[] = [];
  selected: readonly [string, string] | null = null;
  rewrite: (formula: string) => string = (formula) => formula;
  change: (change: LineChange) => void = () => undefined;
  edit: (sheetId: string) => void = () => undefined;
  private styles: IWorkbookData["styles"] = {};
  private added = 0;

  asPageGrid(): PageGrid {
    return this as unknown as PageGrid;
  }

  show(workbook: IWorkbookData): void {
    this.styles = workbook.styles;
    this.kept = workbook.sheetOrder.map((id) => ({
      id,
      name: workbook.sheets[id]?.name ?? "",
      cells: (workbook.sheets[id]?.cellData ?? {}) as Kept["cells"],
    }));
  }

  sheets() {
    return this.kept.map(({ id, name }) => ({ id, name, merged: [] }));
  }

  cells(id: string) {
    const own: CellMatrix = this.kept.find((sheet) => sheet.id === id)?.cells ?? {};
    const showsDate = ({ s }: ICellData) => {
      const style = typeof s === "string" ? this.styles[s] : s;
      return style?.n?.pattern === "yyyy-mm-dd";
    };
    return { own, spilled: {}, showsDate };
  }

  add(name: string, sheet: Partial<IWorksheetData>): string {
    const id = `added-${(this.added += 1)}`;
    this.kept.push({ id, name, cells: (sheet.cellData ?? {}) as Kept["cells"] });
    return id;
  }

  remove(id: string): void {
    this.kept = this.kept.filter((sheet) => sheet.id !== id);
  }

  has(id: string): boolean {
    return this.kept.some((sheet) => sheet.id === id);
  }

  select(id: string, range: string): void {
    this.selected = [id, range];
  }

  takeKeyboard(): void {}

  async finishTyping(): Promise<void> {}

  onLineChange(listener: (change: LineChange) => void): () => void {
    this.change = listener;
    return () => undefined;
  }

  onEdit(listener: (sheetId: string) => void): () => void {
    this.edit = listener;
    return () => undefined;
  }

  onFormula(rewrite: (formula: string) => string): () => void {
    this.rewrite = rewrite;
    return () => undefined;
  }
}
