import type { ICellData, Univer } from "@univerjs/core";
import { FormulaDataModel, ISheetClipboardService } from "@univerjs/preset-sheets-core";

type Spilled = Readonly<Record<number, Readonly<Record<number, ICellData | null>>>>;

/** The grid copies the cell of a formula and leaves empty those that its answer spilled into: here they are copied too. */
export function copySpilled(univer: Univer): void {
  const injector = univer.__getInjector();
  let spilled: Spilled = {};
  const cellAt = (row: number, column: number): ICellData | undefined => spilled[row]?.[column] ?? undefined;
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "spilled-cells",
    onBeforeCopy: (unitId, sheetId) => {
      const cells = injector.get(FormulaDataModel).getArrayFormulaCellData();
      spilled = (cells[unitId]?.[sheetId] ?? {}) as Spilled;
    },
    // The text of the clipboard, then its table.
    getCellValueBySpecialMatrix: cellAt,
    onCopyCellContent: (row, column) => escaped(String(cellAt(row, column)?.v ?? "")),
  });
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
