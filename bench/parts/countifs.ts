import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import ExcelJS from "exceljs";
import { countLooks } from "../../src/cohort/looks-by-band";
import { RESULT } from "../../src/records/records";
import { writeProgram } from "../books";
import { inChild, type Measured } from "../child";
import type { Counted } from "../count-file";
import { libreOffice } from "../libreoffice";
import { cohortFrom, EDGES, idsOf, inventedObservations, SKILL_COUNT } from "../observations";
import { notRun, type Row, same, timesFaster } from "../row";
import { median, ROUNDS, timed } from "../timing";

const BANDS = EDGES.length + 1;
const NET = `Looks by skill, band and result, against ${SKILL_COUNT * BANDS} COUNTIFS of LibreOffice, net of opening and saving, 100,000 rows`;
const WHOLE = "The same from the file to the counts, against the whole run of LibreOffice";
const NET_AIM = 1000;
const WHOLE_AIM = 20;

export async function againstCountifs(): Promise<Row[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const recalculate = libreOffice(folder);
    if (recalculate === null) {
      const why = "LibreOffice is not installed";
      return [notRun(NET, `at least ${NET_AIM} times`, why), notRun(WHOLE, `at least ${WHOLE_AIM} times`, why)];
    }
    return await compare(folder, recalculate);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compare(folder: string, recalculate: (file: string) => string): Promise<Row[]> {
  const invented = inventedObservations(100_000);
  const [asked, plain] = ["asked.xlsx", "plain.xlsx"].map((name) => path.join(folder, name)) as [string, string];
  await writeProgram(asked, invented, true);
  await writeProgram(plain, invented, false);
  const without = await timed(() => recalculate(plain), ROUNDS, 1);
  const withFormulas = await timed(() => recalculate(asked), ROUNDS, 0);
  const ids = idsOf(invented);
  const ours = await timed(() => countLooks(cohortFrom(invented, ids), EDGES), 15, 15);
  const counted: (Counted & Measured)[] = [];
  for (let round = 0; round < ROUNDS; round += 1) counted.push(await inChild<Counted>("count-file", asked));
  const theirs = await countsIn(withFormulas.result);
  return [
    timesFaster(NET, ours.ms, withFormulas.ms - without.ms, NET_AIM),
    same("every cell of these counts", isSame(metOf(ours.result.looks), theirs), "100,000 rows"),
    timesFaster(WHOLE, median(counted.map((each) => each.ms)), withFormulas.ms, WHOLE_AIM),
    same(
      "every cell of these counts",
      counted.every(({ looks }) => isSame(metOf(looks), theirs)),
      "from the file",
    ),
  ];
}

function metOf(looks: ArrayLike<number>): number[] {
  return Array.from({ length: SKILL_COUNT * BANDS }, (_, cell) => looks[cell * 4 + RESULT.met]!);
}

function isSame(ours: readonly number[], theirs: readonly number[]): boolean {
  return (
    ours.length === theirs.length &&
    ours.every((count, cell) => count === theirs[cell]) &&
    ours.some((count) => count > 0)
  );
}

async function countsIn(file: string): Promise<number[]> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const sheet = book.getWorksheet("Counts")!;
  return Array.from({ length: SKILL_COUNT * BANDS }, (_, cell) => {
    const band = cell % BANDS;
    return Number(sheet.getRow((cell - band) / BANDS + 1).getCell(band + 1).result);
  });
}
