import type { ExcelValue } from "./excel-value";

/** Bytes of a value in a request, never fewer than it takes: JSON, then UTF-8, and the comma. */
export function jsonBytes(value: ExcelValue): number {
  if (typeof value === "string") return textBytes(value) + 3;
  if (typeof value === "number") return 25;
  return 6;
}

function textBytes(text: string): number {
  let bytes = 0;
  for (let at = 0; at < text.length; at += 1) bytes += unitBytes(text.charCodeAt(at));
  return bytes;
}

function unitBytes(unit: number): number {
  if (unit < 0x20) return 6;
  if (unit === 0x22 || unit === 0x5c) return 2;
  if (unit < 0x80) return 1;
  return unit < 0x800 ? 2 : 3;
}
