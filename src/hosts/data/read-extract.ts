import { statSync } from "node:fs";
import path from "node:path";
import type { WorkbookIn } from "../../workbook/workbook";
import { readCsv } from "./read-csv";
import { readParquet } from "./read-parquet";
import { readPostgres } from "./read-postgres";
import { readSqlite } from "./read-sqlite";
import { UnreadableExtract } from "./unreadable-extract";

export { UnreadableExtract } from "./unreadable-extract";

type Reader = (file: string, name: string) => Promise<WorkbookIn>;

const READERS: Readonly<Record<string, Reader>> = {
  ".csv": readCsv,
  ".parquet": readParquet,
  ".sqlite": readSqlite,
};

/** Whether records of this name are an extract or a database, and no workbook. */
export function isExtract(source: string): boolean {
  return isDatabase(source) || path.extname(source).toLowerCase() in READERS;
}

/** Whether a source is a server, and no file. */
export function isDatabase(source: string): boolean {
  return /^postgres(ql)?:\/\//i.test(source);
}

/**
 * An extract as a workbook: its sheets are named after the file or the table.
 *
 * @throws {UnreadableExtract} when it cannot be read whole
 */
export async function readExtract(source: string): Promise<WorkbookIn> {
  if (isDatabase(source)) return readPostgres(source);
  const ending = path.extname(source);
  const reader = READERS[ending.toLowerCase()];
  if (!reader) throw new RangeError("readExtract: no extract has this ending");
  const before = stampOf(source);
  const read = await reader(source, path.basename(source, ending));
  if (stampOf(source) !== before)
    throw new UnreadableExtract("it changed while it was read. Wait until it is whole, and try again.");
  return read;
}

function stampOf(file: string): string {
  try {
    const { size, mtimeMs } = statSync(file);
    return `${size} ${mtimeMs}`;
  } catch {
    throw new UnreadableExtract("it cannot be read. Check the name and folder, and close it in other programs.");
  }
}
