import type { Area } from "../workbook/area";
import type { MemorySheet } from "../workbook/memory-sheet";
import type { MemoryWorkbook } from "../workbook/memory-workbook";

export interface MemoryRange {
  readonly workbook: MemoryWorkbook;
  readonly sheet: MemorySheet;
  readonly area: Area;
}
