import type ExcelJS from "exceljs";
import { ageClock, ageMonthsOn } from "../../src/age/correction";
import { completedMonths } from "../../src/age/months";
import { looksByBand } from "../../src/cohort/looks-by-band";
import { componentTest } from "../support/component";
import { recalculated } from "./recalculate";
import { cohort, COUNT_COLUMNS, EDGES, PLANTED, PROGRAM, witnessBook } from "./witness-book";

/**
 * The same records given to LibreOffice Calc, which makes ages with EDATE and counts with COUNTIFS. Every formula is written
 * with a wrong result beside it, so that an answer that was not calculated is seen.
 */
let answer: Promise<ExcelJS.Workbook> | undefined;
const asked = () => (answer ??= recalculated(witnessBook()));

function numbers(book: ExcelJS.Workbook, sheet: string, firstRow: number, column: number, count: number): number[] {
  const from = book.getWorksheet(sheet);
  return Array.from({ length: count }, (_, at) => {
    const { result } = from!.getRow(firstRow + at).getCell(column);
    if (typeof result !== "number")
      throw new Error(`${sheet}, row ${firstRow + at}, column ${column}: no number came back`);
    return result;
  });
}

const rowCount = PROGRAM.rows.length;
const clockOf = (child: number) => {
  const { birth, gestationDays } = PROGRAM.children[child]!;
  return ageClock(birth, gestationDays, PROGRAM.rule);
};

componentTest(["soffice"], "every planted result is calculated anew", async () => {
  const book = await asked();
  const counted = cohort.skills.length * (EDGES.length + 1);
  const all = [5, 6, 7, 8, 9, 10].flatMap((column) => numbers(book, "Observations", 2, column, rowCount));
  for (let column = 1; column <= COUNT_COLUMNS; column += 1) all.push(...numbers(book, "Counts", 1, column, counted));
  expect(all).toHaveLength(rowCount * 6 + counted * COUNT_COLUMNS);
  expect(all).not.toContain(PLANTED);
});

componentTest(["soffice"], "completed months by EDATE on month ends and leap days", async () => {
  const ours = PROGRAM.rows.map((row) => completedMonths(clockOf(row.child).birth, row.day));
  expect(ours).toEqual(numbers(await asked(), "Observations", 2, 10, rowCount));
});

componentTest(["soffice"], "decimal months by EDATE, from the due day until correction stops", async () => {
  const theirs = numbers(await asked(), "Observations", 2, 9, rowCount);
  PROGRAM.rows.forEach((row, at) => {
    const ours = ageMonthsOn(clockOf(row.child), row.day, PROGRAM.bases[row.skill]);
    expect(ours).toBeCloseTo(theirs[at]!, 10);
  });
  expect(Math.min(...theirs)).toBeLessThan(0);
});

componentTest(["soffice"], "looks by skill, band and result by COUNTIFS", async () => {
  const book = await asked();
  const { looks, bandCount } = looksByBand(cohort, EDGES);
  const cells = cohort.skills.length * bandCount;
  const columns = [1, 2, 3, 4].map((column) => numbers(book, "Counts", 1, column, cells));
  const theirs = Array.from({ length: cells }, (_, cell) => columns.map((column) => column[cell]!)).flat();
  expect([...looks]).toEqual(theirs);
  expect(theirs.reduce((sum, each) => sum + each, 0)).toBe(rowCount);
});
