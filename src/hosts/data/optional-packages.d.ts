/**
 * As much of the optional packages as is used here. They may not be installed: the program is built and its types are checked
 * without them.
 */
declare module "@duckdb/node-api" {
  interface DuckDBChunk {
    readonly rowCount: number;
    readonly columnCount: number;
    getColumnValues(column: number): readonly unknown[];
  }
  interface DuckDBConnection {
    run(sql: string): Promise<unknown>;
    runAndReadAll(sql: string): Promise<{ getRows(): readonly (readonly unknown[])[] }>;
    stream(sql: string): Promise<{ fetchChunk(): Promise<DuckDBChunk | null> }>;
    closeSync(): void;
  }
  class DuckDBInstance {
    static create(path: string, options: Readonly<Record<string, string>>): Promise<DuckDBInstance>;
    connect(): Promise<DuckDBConnection>;
    closeSync(): void;
  }
}

declare module "better-sqlite3" {
  interface Statement {
    run(...values: unknown[]): unknown;
    get(): unknown;
    all(): unknown[];
    raw(): Statement;
    columns(): readonly { readonly name: string }[];
    iterate(): IterableIterator<unknown>;
  }
  export default class Database {
    constructor(path: string, options?: { readonly readonly?: boolean; readonly fileMustExist?: boolean });
    defaultSafeIntegers(on: boolean): this;
    exec(sql: string): this;
    prepare(sql: string): Statement;
    transaction<T>(run: () => T): () => T;
    close(): this;
  }
}

declare module "pg" {
  interface QueryResult<Row> {
    readonly rows: Row[];
  }
  class Client {
    constructor(options: Readonly<Record<string, unknown>>);
    connect(): Promise<void>;
    end(): Promise<void>;
    on(event: "error", listener: () => void): this;
    query<Row = unknown>(
      query: string | { readonly text: string; readonly rowMode: "array" },
      values?: readonly unknown[],
    ): Promise<QueryResult<Row>>;
  }
}
