import type * as DuckDb from "@duckdb/node-api";
import type { TextColumns } from "./text-columns";
import { UnreadableExtract } from "./unreadable-extract";

/** Nothing is asked of the network: every extension that is used is built in. */
const OPTIONS = { autoinstall_known_extensions: "false", autoload_known_extensions: "false" };

/** Runs with an engine of its own in memory, and closes it. */
export async function withDuckDb<T>(use: (connection: DuckDb.DuckDBConnection) => Promise<T>): Promise<T> {
  const { DuckDBInstance } = await loaded();
  const instance = await DuckDBInstance.create(":memory:", OPTIONS);
  const connection = await instance.connect();
  try {
    return await use(connection);
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

async function loaded(): Promise<typeof DuckDb> {
  try {
    return await import("@duckdb/node-api");
  } catch {
    throw new UnreadableExtract(
      "CSV and Parquet files are read by DuckDB, which is not installed here: run npm ci again, or save the file as .xlsx.",
    );
  }
}

/** Adds every row of a query of texts to the columns. Rows pass in blocks: they are never all in memory as texts. */
export async function addRows(connection: DuckDb.DuckDBConnection, query: string, to: TextColumns): Promise<number> {
  const result = await connection.stream(query);
  const before = to.rowCount;
  for (;;) {
    const chunk = await result.fetchChunk();
    if (!chunk || chunk.rowCount === 0) return to.rowCount - before;
    const columns = Array.from(
      { length: chunk.columnCount },
      (_, at) => chunk.getColumnValues(at) as (string | null)[],
    );
    to.addChunk(columns, chunk.rowCount);
  }
}

/** A text in a statement. */
export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

/** A column name in a statement. */
export function identifier(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/** The path of one file: its own brackets and stars stand for themselves. */
export function pathLiteral(path: string): string {
  return literal(path.replace(/[[*?]/g, (each) => `[${each}]`));
}
