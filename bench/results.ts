import { writeFileSync } from "node:fs";
import os from "node:os";
import type { Row } from "./row";

const FILE = "bench/RESULTS.md";

export function printed(row: Row): string {
  return `${verdict(row).padEnd(12)}${row.compared}: ${row.seen ?? "not run"} (${row.aim}); ${row.detail}`;
}

/** The whole run with its date and machine. */
export function writeResults(rows: readonly Row[]): void {
  const lines = rows.map((row) =>
    [row.compared, row.seen ?? "not run", row.aim, verdict(row), row.detail]
      .map((cell) => cell.replace(/\|/g, "/"))
      .join(" | "),
  );
  const text = [
    "# Benchmark",
    "",
    `Run on ${new Date().toISOString().slice(0, 10)}: ${machine()}.`,
    "Both sides of every row ran in this one run, on the same invented observations; times are medians of five rounds or more.",
    "The ratios count, the times belong to the machine. `npm run bench` writes this file.",
    "",
    "| compared | seen | aim | | times |",
    "| --- | --- | --- | --- | --- |",
    ...lines.map((line) => `| ${line} |`),
    "",
  ].join("\n");
  writeFileSync(FILE, text);
  console.log(`Written to ${FILE}.`);
}

function verdict(row: Row): string {
  if (row.reached === null) return "not run";
  return row.reached ? "reached" : "NOT REACHED";
}

function machine(): string {
  const gigabytes = Math.round(os.totalmem() / 2 ** 30);
  return `${os.cpus().length} cores (${os.cpus()[0]?.model ?? "unknown"}), ${gigabytes} GB, ${os.type()}, Node ${process.version}`;
}
