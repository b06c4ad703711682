import type { WorkbookIn } from "../../src/workbook/workbook";

/** The memory behind the columns of a workbook: handed to another thread, it is not copied. */
export function buffersOf({ sheets }: WorkbookIn): ArrayBuffer[] {
  const columns = sheets.flatMap(({ grid }) => grid.columns.flatMap((column) => column ?? []));
  const buffers = columns.flatMap(({ kinds, values }) => [kinds.buffer as ArrayBuffer, values.buffer as ArrayBuffer]);
  return [...new Set(buffers)];
}
