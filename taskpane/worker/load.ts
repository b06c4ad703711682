import type { GridColumn } from "../../src/workbook/cells";
import type { WorkbookIn } from "../../src/workbook/workbook";
import type { OpenedWorkbook } from "./messages";

/** The workbook that a worker holds: columns that came transferred, texts that came in parts. */
export class Held {
  private readonly strings: string[][];
  readonly workbook: WorkbookIn;

  constructor({ dateSystem, sheets }: OpenedWorkbook) {
    this.strings = sheets.map(() => []);
    this.workbook = {
      dateSystem,
      sheets: sheets.map(({ rowCount, columns, ...sheet }, index) => ({
        ...sheet,
        grid: { rowCount, columns, strings: this.strings[index] as string[] },
      })),
    };
  }

  addStrings(sheet: number, part: readonly string[]): void {
    const strings = this.strings[sheet];
    for (const text of part) strings?.push(text);
  }

  columns(): readonly (readonly (GridColumn | undefined)[])[] {
    return this.workbook.sheets.map(({ grid }) => grid.columns);
  }
}

/** Every buffer behind the columns, once: what is transferred with them. */
export function buffersOf(sheets: readonly (readonly (GridColumn | undefined)[])[]): ArrayBuffer[] {
  const buffers = new Set<ArrayBufferLike>();
  for (const column of sheets.flat()) {
    if (column) [column.kinds, column.values].forEach(({ buffer }) => buffers.add(buffer));
  }
  return [...buffers].filter(isTransferable);
}

/** By its tag, since a host's buffers may come from another window. */
function isTransferable(buffer: ArrayBufferLike): buffer is ArrayBuffer {
  return buffer[Symbol.toStringTag] === "ArrayBuffer" && buffer.byteLength > 0;
}
