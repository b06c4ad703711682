import { createWriteStream } from "node:fs";
import Module from "node:module";
import path from "node:path";
import { once } from "node:events";
import { isoOf } from "../src/age/day";
import { clocksOf, type Invented } from "./observations";

/** As much of DuckDB's Node client as is used here; it is installed in bench/ alone. */
export interface Connection {
  run(sql: string): Promise<unknown>;
  runAndReadAll(sql: string): Promise<{ getColumns(): unknown[][] }>;
}

interface DuckDb {
  readonly DuckDBInstance: {
    create(file: string, options: Record<string, string>): Promise<{ connect(): Promise<Connection> }>;
  };
}

export const THREADS = 2;

/** Null where DuckDB is not installed. */
export async function connectDuckDb(): Promise<Connection | null> {
  let duckDb: DuckDb;
  try {
    duckDb = Module.createRequire(path.resolve("bench/package.json"))("@duckdb/node-api") as DuckDb;
  } catch {
    return null;
  }
  const instance = await duckDb.DuckDBInstance.create(":memory:", { threads: String(THREADS) });
  return instance.connect();
}

/** Tables `observations(child, skill, day, result)` and `children(child, birth, due, stops)`, loaded through files. */
export async function loadInto(connection: Connection, invented: Invented, folder: string): Promise<void> {
  const { child, skill, day, result } = invented.observations;
  const isoOfDay = isoText();
  const observations = path.join(folder, "observations.csv");
  await writeLines(
    observations,
    child.length,
    (row) => `${child[row]},${skill[row]},${isoOfDay(day[row]!)},${result[row]}`,
  );
  const children = path.join(folder, "children.csv");
  const clocks = clocksOf(invented);
  await writeLines(children, clocks.length, (at) => {
    const { birth, correctedBirth, stops } = clocks[at]!;
    return `${at},${isoOfDay(birth)},${isoOfDay(correctedBirth)},${isoOfDay(stops)}`;
  });
  await connection.run(
    `CREATE TABLE observations AS FROM read_csv('${observations}', header = false,
       columns = {'child': 'INTEGER', 'skill': 'UTINYINT', 'day': 'DATE', 'result': 'UTINYINT'})`,
  );
  await connection.run(
    `CREATE TABLE children AS FROM read_csv('${children}', header = false,
       columns = {'child': 'INTEGER', 'birth': 'DATE', 'due': 'DATE', 'stops': 'DATE'})`,
  );
}

function isoText(): (day: number) => string {
  const known = new Map<number, string>();
  return (day) => {
    let text = known.get(day);
    if (text === undefined) known.set(day, (text = isoOf(day)));
    return text;
  };
}

const LINES_AT_ONCE = 50_000;

async function writeLines(file: string, count: number, line: (at: number) => string): Promise<void> {
  const stream = createWriteStream(file);
  for (let from = 0; from < count; from += LINES_AT_ONCE) {
    const lines = Array.from({ length: Math.min(LINES_AT_ONCE, count - from) }, (_, at) => `${line(from + at)}\n`);
    if (!stream.write(lines.join(""))) await once(stream, "drain");
  }
  stream.end();
  await once(stream, "finish");
}
