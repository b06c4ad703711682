import { answer, inChild } from "./child";
import { printed, writeResults } from "./results";
import { notRun, type Row } from "./row";

/**
 * Each part runs in a process of its own, so that none leaves the next a full heap or a warmed-up engine, and loads only what
 * it needs.
 */
const PARTS: Readonly<Record<string, () => Promise<Row[]>>> = {
  reading: async () => (await import("./parts/reading")).againstReaders(),
  plain: async () => (await import("./parts/plain")).againstPlainObjects(),
  columns: async () => (await import("./parts/columns")).againstOnePass(),
  duckdb: async () => (await import("./parts/duckdb")).againstDuckDb(),
  scan: async () => (await import("./parts/scan")).againstPlainScan(),
  estimate: async () => (await import("./parts/estimate")).againstNpsurv(),
  pane: async () => (await import("./parts/pane")).ofPaneThread(),
  release: async () => (await import("./parts/release")).ofRelease(),
  countifs: async () => (await import("./parts/countifs")).againstCountifs(),
};

const JOBS: Readonly<Record<string, (file: string) => Promise<object>>> = {
  "count-file": async (file) => (await import("./count-file")).countFile(file),
  "read-ours": async (file) => (await import("./readers/ours")).readWithOurs(file),
  "read-saxes": async (file) => (await import("./readers/saxes")).readWithSaxes(file),
  "read-exceljs": async (file) => (await import("./readers/exceljs")).readWithExceljs(file),
};

async function main(words: readonly string[]): Promise<void> {
  const [job = "", file = ""] = words;
  if (job.startsWith("job:")) return doJob(job.slice("job:".length), file);
  const unknown = words.filter((word) => !(word in PARTS));
  if (unknown.length > 0)
    throw new RangeError(`no such part: ${unknown.join(", ")}; there are ${Object.keys(PARTS).join(", ")}`);
  const rows: Row[] = [];
  for (const part of words.length > 0 ? words : Object.keys(PARTS)) {
    process.stderr.write(`${part} …\n`);
    const found = await rowsOf(part);
    console.log(found.map(printed).join("\n"));
    rows.push(...found);
  }
  if (words.length === 0) writeResults(rows);
}

async function doJob(job: string, file: string): Promise<void> {
  const part = PARTS[job];
  if (part) return answer(async () => ({ rows: await part() }));
  return answer(() => JOBS[job]!(file));
}

async function rowsOf(part: string): Promise<readonly Row[]> {
  try {
    return (await inChild<{ rows: Row[] }>(part)).rows;
  } catch (error) {
    return [notRun(`The part "${part}"`, "", error instanceof Error ? error.message : String(error))];
  }
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error);
  process.exitCode = 1;
});
