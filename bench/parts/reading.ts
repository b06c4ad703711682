import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeRecords } from "../books";
import { inChild, type Measured } from "../child";
import { inventedObservations } from "../observations";
import type { Found } from "../readers/found";
import { amount, atMost, type Row, same, timesFaster } from "../row";
import { median, ROUNDS } from "../timing";

const SIZE = "500,000 rows of four columns, each in a process of its own";

/** Reading a file, cold, as a person meets it. */
export async function againstReaders(): Promise<Row[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const file = path.join(folder, "records.xlsx");
    await writeRecords(file, inventedObservations(500_000));
    const [ours, saxes, exceljs] = [
      await runs("read-ours", file),
      await runs("read-saxes", file),
      await runs("read-exceljs", file),
    ];
    return [
      timesFaster(`Reading an xlsx file, against saxes over the same unzipping, ${SIZE}`, ms(ours), ms(saxes), 4),
      timesFaster(`Reading an xlsx file, against exceljs, ${SIZE}`, ms(ours), ms(exceljs), 10),
      memory(peak(ours), peak(exceljs)),
      same("what the three read", isSame([...ours, ...saxes, ...exceljs]), "rows, dates, last child"),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Run = Found & Measured;

async function runs(job: string, file: string): Promise<Run[]> {
  const found: Run[] = [];
  for (let round = 0; round < ROUNDS; round += 1) found.push(await inChild<Found>(job, file));
  return found;
}

function memory(ours: number, theirs: number): Row {
  const detail = `${amount(ours)} MB against ${amount(theirs)} MB`;
  return atMost("its most memory, against that of exceljs", ours / theirs, 0.25, " times", detail);
}

const ms = (runs: readonly Run[]) => median(runs.map((each) => each.jobMs));
const peak = (runs: readonly Run[]) => median(runs.map((each) => each.peakMegabytes));

function isSame(runs: readonly Run[]): boolean {
  return runs.every(({ rows, dates, lastChild }) => {
    return rows === runs[0]!.rows && dates === runs[0]!.dates && lastChild === runs[0]!.lastChild && rows === 500_001;
  });
}
