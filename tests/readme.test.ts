import { readFileSync } from "node:fs";
import path from "node:path";
import { FUNCTIONS } from "../functions/registry";
import { BOOK, temporaryFolder, windowline } from "./support/windowline";

const readme = readFileSync("README.md", "utf8").replace(/\n> /g, " ");
type Row = Record<string, string & number>;

/** The answer of the README, made again from the sample workbook. */
test("the question of the README has the numbers of the report", () => {
  const json = path.join(temporaryFolder(), "report.json");
  const words = ["--as-of", "2026-09-30", "--tables", "met-by-band,age-when-met", "--json", json];
  expect(windowline(["report", BOOK, ...words]).status).toBe(0);
  const tables = JSON.parse(readFileSync(json, "utf8")).tables;
  const age = rowOf(tables, "age-when-met", (row) => row.skill === "walk-alone");
  const band = rowOf(tables, "met-by-band", (row) => row.skill === "walk-alone" && row.band === "12 to <18 months");
  const one = (value: number) => value.toFixed(1);
  for (const said of [
    `by **${one(age.recordedMedian!)} months**`,
    `of ${age.children} children observed, ${age.hadAtFirstLook} walked at their first check, ${age.interval} began between two checks and ${age.notMet} had not`,
    `half walk by **${one(age.p50!)} months** (95% limits ${one(age.p50Lower!)} to ${one(age.p50Upper!)}, approximate)`,
    `a quarter by ${one(age.p25!)} and nine in ten by ${one(age.p90!)} months`,
    `window at ${age.closes} months an estimated **${one(age.shareByClose! * 100)}%** (${one(age.shareByCloseLower! * 100)}% to ${(age.shareByCloseUpper! * 100).toFixed(0)}%)`,
    `${band.met} of the ${band.assessed} children`,
    `(${(band.shareMet! * 100).toFixed(0)}%, 95% limits ${(band.lower! * 100).toFixed(0)}% to ${(band.upper! * 100).toFixed(0)}%), of ${band.children} in that age group`,
  ]) {
    expect(readme).toContain(said);
  }
});

test("every function stands on its page with its arguments", () => {
  const page = readFileSync("functions/FUNCTIONS.md", "utf8");
  for (const [name, { parameters }] of FUNCTIONS) expect(page).toContain(`| ${name} | ${parameters.join(", ")} |`);
});

function rowOf(
  tables: { id: string; columns: { key: string }[]; rows: unknown[][] }[],
  id: string,
  which: (row: Row) => boolean,
): Row {
  const table = tables.find((each) => each.id === id)!;
  const rows = table.rows.map((row) => Object.fromEntries(table.columns.map(({ key }, at) => [key, row[at]])) as Row);
  return rows.find(which)!;
}
