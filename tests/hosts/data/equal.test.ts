import { writeFileSync } from "node:fs";
import path from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import Database from "better-sqlite3";
import { isoOf } from "../../../src/age/day";
import { readExtract } from "../../../src/hosts/data/read-extract";
import { readRecords } from "../../../src/records/read-records";
import { reportJson } from "../../../src/report/json";
import type { SampleTable } from "../../../src/sample/make-sample";
import type { TableId } from "../../../src/tables/table";
import { oneWorkbook } from "../../../src/workbook/sources";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { settingsOf } from "../../records/book";
import { SAMPLE, WHOLE } from "../../records/sources/parts";
import { reportOf } from "../../support/report-of";
import { temporaryFolder } from "../../support/windowline";

/** One program as a workbook and as extracts: the same figures, to the byte. */
const SETTINGS = settingsOf({ asOf: "2026-09-30", by: "Site" });
const TABLES =
  "met-by-band met-by-band-left expected-by-now referrals referral-scan referral-steps ratings trend agreement".split(
    " ",
  ) as TableId[];

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);

function figures(workbook: WorkbookIn): string[] {
  const lines = reportJson({ ...reportOf(workbook, SETTINGS, TABLES), input: [], findings: [] }).split("\n");
  return lines.slice(0, lines.indexOf('  "provenance": {'));
}

/** The rows of a table as texts, days as ISO dates. */
function texts({ headings, dayColumns, rows }: SampleTable): (string | null)[][] {
  const isDay = headings.map((heading) => dayColumns.includes(heading));
  return rows.map((row) =>
    row.map((cell, column) => (cell === null ? null : isDay[column] ? isoOf(cell as number) : String(cell))),
  );
}

function csvOf(table: SampleTable): string {
  const quoted = (cell: string | null) =>
    cell !== null && /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
  return [table.headings, ...texts(table)].map((row) => row.map(quoted).join(",")).join("\r\n");
}

async function opened(files: readonly string[]): Promise<WorkbookIn> {
  const sources = [];
  for (const file of files) sources.push({ file: path.basename(file), workbook: await readExtract(file) });
  return oneWorkbook(sources);
}

async function parquetOf(csv: string): Promise<string> {
  const file = csv.replace(/csv$/, "parquet");
  const instance = await DuckDBInstance.create(":memory:", {
    autoinstall_known_extensions: "false",
    autoload_known_extensions: "false",
  });
  const connection = await instance.connect();
  // numbers and days take types of their own here
  await connection.run(
    `COPY (SELECT * FROM read_csv('${csv}', header = true, sample_size = -1)) TO '${file}' (FORMAT parquet)`,
  );
  instance.closeSync();
  return file;
}

function sqliteOf(tables: readonly SampleTable[]): string {
  const database = new Database(at("program.sqlite"));
  database.exec("BEGIN");
  for (const table of tables) {
    const columns = table.headings.map((heading) => `"${heading}"`);
    database.exec(`CREATE TABLE ${table.name.toLowerCase()} (${columns.join(", ")})`);
    const insert = database.prepare(
      `INSERT INTO ${table.name.toLowerCase()} VALUES (${columns.map(() => "?").join(", ")})`,
    );
    const isDay = table.headings.map((heading) => table.dayColumns.includes(heading));
    for (const row of table.rows)
      insert.run(row.map((cell, c) => (isDay[c] && cell !== null ? isoOf(cell as number) : cell)));
  }
  database.exec("COMMIT");
  database.close();
  return at("program.sqlite");
}

const csv = SAMPLE.tables.map((table) => {
  const file = at(`${table.name.toLowerCase()}.csv`);
  writeFileSync(file, csvOf(table));
  return file;
});
const whole = figures(WHOLE);

test("CSV, each named after its table", async () => {
  const workbook = await opened(csv);
  expect(figures(workbook)).toEqual(whole);
  const { input } = readRecords(workbook, SETTINGS);
  expect(input.map(({ table, file, rows }) => [table, file, rows])).toEqual(
    SAMPLE.tables.map(({ name, rows }) => [name, `${name.toLowerCase()}.csv`, rows.length]),
  );
});

test("Parquet with days and numbers of their own types", async () => {
  const parquet = [];
  for (const file of csv) parquet.push(await parquetOf(file));
  expect(figures(await opened(parquet))).toEqual(whole);
});

test("SQLite, a table each", async () => {
  expect(figures(await opened([sqliteOf(SAMPLE.tables)]))).toEqual(whole);
});

test.each([
  ["broken.parquet", /not a Parquet file, or it is damaged/],
  ["broken.sqlite", /not a SQLite database/],
  ["none.csv", /cannot be read/],
])("%s is refused in a sentence", async (name, message) => {
  if (name.startsWith("broken"))
    writeFileSync(at(name), "no such thing at all, and long enough to be looked at twice".repeat(50));
  await expect(readExtract(at(name))).rejects.toThrow(message);
});
