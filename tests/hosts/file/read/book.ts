import { strToU8, zipSync, type Zippable, type ZippableFile } from "fflate";
import { readWorkbook, type ReadOptions } from "../../../../src/hosts/file/read-workbook";
import { CELL, kindAt, numberAt, stringAt } from "../../../../src/workbook/cells";
import type { SheetIn, WorkbookIn } from "../../../../src/workbook/workbook";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

/** A hand-made workbook: the parts given, and plain ones for what is left out. */
export type Parts = Record<string, string | Uint8Array | null>;

export function usualParts(): Record<string, string> {
  return {
    "[Content_Types].xml": '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    "_rels/.rels": relations([["r1", "officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": workbook(),
    "xl/_rels/workbook.xml.rels": relations([
      ["r1", "worksheet", "worksheets/sheet1.xml"],
      ["r2", "sharedStrings", "sharedStrings.xml"],
      ["r3", "styles", "styles.xml"],
    ]),
    "xl/sharedStrings.xml": `<sst xmlns="${MAIN}"/>`,
    "xl/styles.xml": `<styleSheet xmlns="${MAIN}"><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
    "xl/worksheets/sheet1.xml": sheet(""),
  };
}

export function bookBytes(parts: Parts = {}): Uint8Array {
  const files: Zippable = {};
  for (const [name, content] of Object.entries({ ...usualParts(), ...parts })) {
    if (content !== null) files[name] = (typeof content === "string" ? strToU8(content) : content) as ZippableFile;
  }
  return zipSync(files, { level: 1 });
}

export function workbook(inside = ""): string {
  return `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${inside}<sheets><sheet name="Sheet1" sheetId="1" r:id="r1"/></sheets></workbook>`;
}

/** A worksheet part around the rows given. */
export function sheet(rows: string, after = ""): string {
  return `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${after}</worksheet>`;
}

export function shared(...items: readonly string[]): string {
  return `<sst xmlns="${MAIN}">${items.map((item) => `<si>${item}</si>`).join("")}</sst>`;
}

export function relations(
  rows: readonly (readonly [id: string, type: string, target: string, mode?: string])[],
): string {
  const each = rows.map(([id, type, target, mode]) => {
    const full = type.includes(":") ? type : `${OFFICE}/${type}`;
    return `<Relationship Id="${id}" Type="${full}" Target="${target}"${mode === undefined ? "" : ` TargetMode="${mode}"`}/>`;
  });
  return `<Relationships xmlns="${PACKAGE}">${each.join("")}</Relationships>`;
}

/** Reads a hand-made workbook through the scanner and through the fallback parser, which must agree. */
export async function bothWays(parts: Parts, options: ReadOptions = {}): Promise<WorkbookIn> {
  const bytes = bookBytes(parts);
  const scanned = await readWorkbook(bytes, options);
  expect(plain(await readWorkbook(bytes, { ...options, scan: false }))).toEqual(plain(scanned));
  return scanned;
}

export async function firstSheet(parts: Parts): Promise<SheetIn> {
  return (await bothWays(parts)).sheets[0] as SheetIn;
}

/** The cells of rows given as XML, as `cellsOf` shows them. */
export async function cells(rows: string, parts: Parts = {}): Promise<Record<string, unknown>> {
  return cellsOf(await firstSheet({ "xl/worksheets/sheet1.xml": sheet(rows), ...parts }));
}

/** Why a workbook is refused; fails the test where it is read. */
export async function refusal(bytes: Uint8Array, options: ReadOptions = {}): Promise<string> {
  const outcome = await readWorkbook(bytes, options).catch((error: unknown) => error);
  expect(outcome).toMatchObject({ name: "UnreadableWorkbook" });
  return (outcome as Error).message;
}

/** Every filled cell by its address: numbers, texts and booleans as they are, the rest as `kind: value`. */
export function cellsOf({ grid }: Pick<SheetIn, "grid">): Record<string, unknown> {
  const found: [string, unknown][] = [];
  for (let row = 0; row < grid.rowCount; row += 1) {
    for (let column = 0; column < grid.columns.length; column += 1) {
      const kind = kindAt(grid, row, column);
      if (kind !== CELL.empty) found.push([`${row},${column}`, shown(kind, grid, row, column)]);
    }
  }
  return Object.fromEntries(found);
}

function shown(kind: number, grid: SheetIn["grid"], row: number, column: number): unknown {
  const value = numberAt(grid, row, column);
  if (kind === CELL.number) return value;
  if (kind === CELL.text) return stringAt(grid, row, column);
  if (kind === CELL.boolean) return value === 1;
  if (kind === CELL.date) return `date: ${value}`;
  return kind === CELL.error ? `error: ${stringAt(grid, row, column)}` : "no cached value";
}

/** A workbook in a form that can be compared, whatever its grids' strings are numbered. */
export function plain(book: WorkbookIn): unknown {
  return {
    dateSystem: book.dateSystem,
    sheets: book.sheets.map((each) => ({
      name: each.name,
      rowCount: each.grid.rowCount,
      cells: cellsOf(each),
      tables: each.tables,
      merged: each.merged,
    })),
  };
}
