import type * as Postgres from "pg";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { identifier } from "./duckdb";
import { TextColumns } from "./text-columns";
import { UnreadableExtract } from "./unreadable-extract";

const ROWS_AT_ONCE = 10_000;

/**
 * The tables and views of a PostgreSQL database as a workbook, every cell a text: those of the first schema of its search path. They are
 * read in one read-only transaction, so as they are at one moment. The password comes from PGPASSWORD or ~/.pgpass.
 *
 * @throws {UnreadableExtract} when the server does not answer, refuses, or gives other rows than it counts
 */
export async function readPostgres(address: string): Promise<WorkbookIn> {
  const client = await connected(address);
  try {
    await client.query("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");
    const sheets: SheetIn[] = [];
    for (const name of await tablesOf(client)) sheets.push(await sheetOf(client, name));
    await client.query("COMMIT");
    if (sheets.length === 0)
      throw new UnreadableExtract("the database has no table. Name the database that has the records.");
    return { dateSystem: 1900, sheets };
  } catch (error) {
    if (error instanceof UnreadableExtract) throw error;
    throw new UnreadableExtract(`the server stopped answering, or refused to read a table${codeOf(error)}. Try again.`);
  } finally {
    await client.end().catch(() => undefined);
  }
}

async function connected(address: string): Promise<Postgres.Client> {
  const { Client: Connection } = await loaded();
  const client = new Connection({
    connectionString: address,
    connectionTimeoutMillis: 30_000,
    query_timeout: 600_000,
    application_name: "windowline",
  });
  // A server that goes away while nothing is asked: the next question fails, and says so.
  client.on("error", () => undefined);
  try {
    await client.connect();
    return client;
  } catch (error) {
    throw new UnreadableExtract(
      `the server did not let us in${codeOf(error)}. Check its address, and that PGPASSWORD has the password of a user who may read.`,
    );
  }
}

async function loaded(): Promise<typeof Postgres> {
  try {
    return await import("pg");
  } catch {
    throw new UnreadableExtract(
      "PostgreSQL databases are read by pg, which is not installed here: run npm ci again, or export the tables as CSV.",
    );
  }
}

async function tablesOf(client: Postgres.Client): Promise<string[]> {
  const { rows } = await client.query<{ readonly name: string }>(
    "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = current_schema() ORDER BY table_name",
  );
  return rows.map(({ name }) => name);
}

async function sheetOf(client: Postgres.Client, name: string): Promise<SheetIn> {
  const { rows: described } = await client.query<{ readonly heading: string; readonly type: string }>(
    "SELECT column_name AS heading, data_type AS type FROM information_schema.columns WHERE table_schema = current_schema() AND table_name = $1 ORDER BY ordinal_position",
    [name],
  );
  const columns = new TextColumns(described.length);
  columns.addRow(described.map(({ heading }) => heading));
  const cells = described.map(({ heading, type }) => asText(identifier(heading), type));
  await client.query(`DECLARE windowline NO SCROLL CURSOR FOR SELECT ${cells.join(", ")} FROM ${identifier(name)}`);
  for (let taken = ROWS_AT_ONCE; taken === ROWS_AT_ONCE;) {
    const { rows } = await client.query<(string | null)[]>({
      text: `FETCH ${ROWS_AT_ONCE} FROM windowline`,
      rowMode: "array",
    });
    for (const row of rows) columns.addRow(row);
    taken = rows.length;
  }
  await client.query("CLOSE windowline");
  const {
    rows: [counted],
  } = await client.query<{ readonly n: string }>(`SELECT count(*)::text AS n FROM ${identifier(name)}`);
  const read = columns.rowCount - 1;
  if (String(read) !== counted?.n)
    throw new UnreadableExtract(`${read} of the ${counted?.n ?? "?"} rows of ${name} were read. Try again.`);
  return columns.sheet(name);
}

/** A moment at midnight is a day. */
function asText(column: string, type: string): string {
  if (!type.startsWith("timestamp")) return `${column}::text`;
  return `CASE WHEN ${column}::time = '00:00' THEN to_char(${column}, 'YYYY-MM-DD') ELSE ${column}::text END`;
}

/** The code of a failure says what it was; its message may name a user or a row. */
function codeOf(error: unknown): string {
  const code = (error as { readonly code?: unknown }).code;
  return typeof code === "string" && /^[A-Z0-9_]{3,20}$/i.test(code) ? ` (${code})` : "";
}
