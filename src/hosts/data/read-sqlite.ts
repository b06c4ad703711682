import type Sqlite from "better-sqlite3";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { identifier } from "./duckdb";
import { TextColumns } from "./text-columns";
import { UnreadableExtract } from "./unreadable-extract";

/**
 * A SQLite file as a workbook: a sheet for each table and view, every cell a text. All of it is read as it is at one moment.
 *
 * @throws {UnreadableExtract} when it is no such file, or has no table
 */
export async function readSqlite(path: string): Promise<WorkbookIn> {
  const Database = await loaded();
  let database: Sqlite | null = null;
  try {
    database = new Database(path, { readonly: true, fileMustExist: true });
    database.defaultSafeIntegers(true);
    const open = database;
    const read = open.transaction(() => tablesOf(open).map((name) => sheetOf(open, name)))();
    if (read.length === 0) throw new UnreadableExtract("it has no table. Name the database that has the records.");
    return { dateSystem: 1900, sheets: read };
  } catch (error) {
    if (error instanceof UnreadableExtract) throw error;
    throw new UnreadableExtract(
      "this is not a SQLite database, or it is damaged or locked: close it in other programs, or copy it again.",
    );
  } finally {
    database?.close();
  }
}

async function loaded(): Promise<typeof Sqlite> {
  try {
    return (await import("better-sqlite3")).default;
  } catch {
    throw new UnreadableExtract(
      "SQLite databases are read by better-sqlite3, which is not installed here: run npm ci again, or export the tables as CSV.",
    );
  }
}

function tablesOf(database: Sqlite): string[] {
  const rows = database
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name",
    )
    .all() as { readonly name: string }[];
  return rows.map(({ name }) => name);
}

function sheetOf(database: Sqlite, name: string): SheetIn {
  const select = database.prepare(`SELECT * FROM ${identifier(name)}`).raw();
  const columns = new TextColumns(select.columns().length);
  columns.addRow(select.columns().map((column) => column.name));
  for (const row of select.iterate()) columns.addRow((row as unknown[]).map(asText));
  const counted = database.prepare(`SELECT count(*) AS n FROM ${identifier(name)}`).get() as { readonly n: bigint };
  const read = columns.rowCount - 1;
  if (BigInt(read) !== counted.n)
    throw new UnreadableExtract(`${read} of the ${counted.n} rows of ${name} were read. Try again.`);
  return columns.sheet(name);
}

function asText(value: unknown): string | null {
  if (value === null || value === undefined) return null;
  if (typeof value === "string") return value;
  return typeof value === "bigint" || typeof value === "number" ? String(value) : null;
}
