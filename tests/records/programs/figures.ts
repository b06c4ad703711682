import { applyChoice } from "../../../src/records/understanding/choices";
import { fromFile, toFile } from "../../../src/records/understanding/file";
import type { Understanding } from "../../../src/records/understanding/understanding";
import { readRecords } from "../../../src/records/read-records";
import type { Records } from "../../../src/records/records";
import { runReport } from "../../../src/report/run";
import type { Table } from "../../../src/tables/table";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { settingsOf } from "../book";
import type { Program } from "./make-sheets";
import { makePlan, type Plan, type Truth } from "./plan";

/** Confirming is one act, and each choice is one. */
export function settle(program: Program, found: Understanding): { settled: Understanding; acts: number } {
  const acts = program.acts(found);
  const settled = acts.reduce(applyChoice, applyChoice(found, { kind: "confirm" }));
  return { settled, acts: acts.length + 1 };
}

export function planOf({ keeps = (plan) => plan }: Program, seed: number, children?: number): Plan {
  return keeps(makePlan(seed, children));
}

/** The records of a workbook by what was settled, as they are read from the file that was kept. */
export function readWith(workbook: WorkbookIn, settled: Understanding): Records {
  const file = fromFile(JSON.parse(JSON.stringify(toFile(settled))));
  if ("messages" in file) throw new Error(file.messages.join(" "));
  return readRecords(workbook, settingsOf({ asOf: "2026-09-30", by: "Site" }), file.decisions);
}

export function figuresOf(records: Records, { asOf }: Plan): Truth {
  const run = runReport(records, {
    settings: settingsOf({ asOf, by: "Site" }),
    tables: ["met-by-band"],
    source: { fingerprint: "", records: [], sites: [], corrections: null },
  });
  if ("reason" in run) throw new Error(run.reason);
  const table = run.report.tables[0] as Table;
  const at = (key: string) => table.columns.findIndex((column) => column.key === key);
  const siteAt = table.columns.findIndex(({ label }) => label === "Site");
  const rows = table.rows.filter((row) => row[at("skill")] === "all");
  const sum = (key: string) => rows.reduce((total, row) => total + Number(row[at(key)]), 0);
  const first = table.rows.find((row) => row[at("skill")] !== "all")?.[at("skill")];
  const bySite: Record<string, number> = {};
  for (const row of table.rows.filter((each) => each[at("skill")] === first)) {
    const site = String(row[siteAt]);
    bySite[site] = (bySite[site] ?? 0) + Number(row[at("children")]);
  }
  return {
    inProgram: run.report.print.followed,
    met: sum("met"),
    assessed: sum("assessed"),
    bySite,
    born37Early: records.children.gestationDays.reduce((n, days) => n + (days > 0 && days < 259 ? 1 : 0), 0),
  };
}
