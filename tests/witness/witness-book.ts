import ExcelJS from "exceljs";
import { USUAL_EDGES } from "../../src/age/bands";
import { addMonths } from "../../src/age/months";
import { serialOf } from "../../src/age/serial";
import { RESULT_LABELS } from "../../src/records/records";
import { type Child, cohortOf, day, type Row, type SmallProgram, USUAL_RULE } from "../cohort/small-cohorts";

/** What every formula claims to be before it is calculated: no right answer has this value. */
export const PLANTED = 987_654;

export const EDGES = USUAL_EDGES;
export const COUNT_COLUMNS = RESULT_LABELS.length;

/** Born on month ends and leap days, at term and early; 258 days is the last gestation that is corrected. */
const CHILDREN: readonly Child[] = [
  { birth: day("2020-02-29"), gestationDays: null },
  { birth: day("2020-02-29"), gestationDays: 196 },
  { birth: day("2021-01-31"), gestationDays: 280 },
  { birth: day("2021-01-31"), gestationDays: 224 },
  { birth: day("2022-08-31"), gestationDays: 258 },
  { birth: day("2022-08-31"), gestationDays: 259 },
  { birth: day("2022-12-30"), gestationDays: 167 },
  { birth: day("2023-03-15"), gestationDays: 231 },
];
const MONTHS = 38;

/** Looks on, before and after every month birthday, and before the due day, of three skills on both age bases. */
export const PROGRAM: SmallProgram = {
  children: CHILDREN,
  bases: ["corrected", "chronological", "corrected"],
  rule: USUAL_RULE,
  rows: CHILDREN.flatMap((each, child) => looksOf(each, child)),
};

export const cohort = cohortOf(PROGRAM);

function looksOf({ birth }: Child, child: number): Row[] {
  return Array.from({ length: MONTHS * 3 }, (_, at) => {
    const around = addMonths(birth, Math.floor(at / 3)) + (at % 3) - 1;
    const seed = (at * 37 + child * 11) % 97;
    return { child, skill: seed % 3, day: Math.max(birth, around), result: seed % 4, exact: 0, observer: -1 };
  });
}

/**
 * Raw records, and classic formulas that make ages and counts of them. EDATE gives month ends clamped to the month's last
 * day; DATEDIF does not.
 */
export function witnessBook(): ExcelJS.Workbook {
  const book = new ExcelJS.Workbook();
  addChildren(book.addWorksheet("Children"));
  addObservations(book.addWorksheet("Observations"));
  addCounts(book.addWorksheet("Counts"));
  // Left to itself, Calc would show the result of EDATE as a date.
  for (const sheet of book.worksheets) sheet.columns.forEach((column) => (column.numFmt = "0.000000"));
  return book;
}

function addChildren(sheet: ExcelJS.Worksheet): void {
  sheet.addRow(["Child", "Birth date", "Gestation days"]);
  CHILDREN.forEach(({ birth, gestationDays }, child) =>
    sheet.addRow([child + 1, serialOf(birth, 1900), gestationDays]),
  );
}

/** Columns: E birth, F gestation, G the day ages are counted from, H completed months, I decimal months. */
function addObservations(sheet: ExcelJS.Worksheet): void {
  sheet.addRow([
    "Child",
    "Skill",
    "Date",
    "Result",
    "Birth",
    "Gestation",
    "From",
    "Completed",
    "Months",
    "By birth date",
  ]);
  PROGRAM.rows.forEach((row, index) => {
    const r = index + 2;
    const isCorrected = PROGRAM.bases[row.skill] === "corrected";
    const fromDue = `IF(AND(F${r}<259,C${r}<EDATE(E${r},24)),E${r}+280-F${r},E${r})`;
    sheet.addRow([
      row.child + 1,
      `S${row.skill + 1}`,
      serialOf(row.day, 1900),
      RESULT_LABELS[row.result],
      planted(`INDEX(Children!B:B,MATCH(A${r},Children!A:A,0))`),
      planted(
        `IF(INDEX(Children!C:C,MATCH(A${r},Children!A:A,0))="",280,INDEX(Children!C:C,MATCH(A${r},Children!A:A,0)))`,
      ),
      planted(isCorrected ? fromDue : `E${r}`),
      planted(completed(`G${r}`, `C${r}`)),
      planted(`H${r}+(C${r}-EDATE(G${r},H${r}))/(EDATE(G${r},H${r}+1)-EDATE(G${r},H${r}))`),
      planted(completed(`E${r}`, `C${r}`)),
    ]);
  });
}

function completed(from: string, on: string): string {
  const months = `(YEAR(${on})-YEAR(${from}))*12+MONTH(${on})-MONTH(${from})`;
  return `${months}-IF(EDATE(${from},${months})>${on},1,0)`;
}

/** One row a skill and band, one column a result, in the order of `looksByBand`. */
function addCounts(sheet: ExcelJS.Worksheet): void {
  const last = PROGRAM.rows.length + 1;
  const column = (letter: string) => `Observations!$${letter}$2:$${letter}$${last}`;
  PROGRAM.bases.forEach((_, skill) => {
    for (let band = 0; band <= EDGES.length; band += 1) {
      const from = band === 0 ? "" : `,${column("I")},">=${EDGES[band - 1]}"`;
      const to = band === EDGES.length ? "" : `,${column("I")},"<${EDGES[band]}"`;
      sheet.addRow(
        RESULT_LABELS.map((label) =>
          planted(`COUNTIFS(${column("B")},"S${skill + 1}",${column("D")},"${label}"${from}${to})`),
        ),
      );
    }
  });
}

function planted(formula: string): ExcelJS.CellFormulaValue {
  return { formula, result: PLANTED };
}
