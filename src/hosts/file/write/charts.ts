import type { Worksheet } from "wasm-xlsxwriter/web";
import type { SheetOut } from "../../../workbook/sheets";
export function addCharts(_target: Worksheet, _sheet: SheetOut, _name: string): void {}
