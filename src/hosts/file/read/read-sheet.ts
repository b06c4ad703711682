import type { SheetIn } from "../../../workbook/workbook";
import { CellColumns } from "./cell-columns";
import { SHEET_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { readTables } from "./read-tables";
import { ScannedPart } from "./scan/scanned-part";
import { SheetScanner } from "./scan/sheet-scanner";
import { type BookContext, SheetCells } from "./sheet-cells";
import { SheetHandler } from "./sheet-handler";
import type { SheetPart } from "./workbook-part";
import { XmlReader } from "./xml-reader";

export async function readSheet(
  parts: PackageParts,
  { name, part }: SheetPart,
  book: BookContext,
  scan: boolean,
): Promise<SheetIn> {
  const columns = new CellColumns(name, book.limits);
  const cells = new SheetCells(columns, book, name);
  const handler = new SheetHandler(cells);
  const xml = new XmlReader(part, SHEET_NAMESPACES, handler, parts.limits.parsedBytes);
  const reader = scan ? new ScannedPart(xml, new SheetScanner(cells, handler)) : xml;
  await parts.read(part, (piece) => reader.write(piece));
  reader.end();
  const tables = await readTables(parts, part, book.limits);
  return { name, grid: columns.grid(book.texts.list), tables, merged: handler.merged };
}
