import ExcelJS from "exceljs";
import { ageMonthsOn } from "../src/age/correction";
import { type Day } from "../src/age/day";
import { serialOf } from "../src/age/serial";
import { RESULT_LABELS } from "../src/records/records";
import { clocksOf, EDGES, type Invented, SKILLS } from "./observations";

/** The workbook of a program with these observations; with formulas, a sheet of COUNTIFS too. */
export async function writeProgram(file: string, invented: Invented, withFormulas: boolean): Promise<void> {
  const book = openBook(file);
  addChildren(book, invented);
  addSkills(book);
  addObservations(book, invented);
  if (withFormulas) addCounts(book, invented.observations.child.length);
  await book.commit();
}

/** Observations alone, four columns: what a file of any program mostly is. */
export async function writeRecords(file: string, invented: Invented): Promise<void> {
  const book = openBook(file);
  const { child, skill, day, result } = invented.observations;
  const sheet = book.addWorksheet("Observations");
  sheet.getColumn(3).numFmt = "yyyy-mm-dd";
  sheet.addRow(["Child", "Skill", "Date", "Result"]).commit();
  child.forEach((who, row) => {
    const cells = [`C${who + 1}`, `S${skill[row]! + 1}`, serialOf(day[row]!, 1900), RESULT_LABELS[result[row]!]];
    sheet.addRow(cells).commit();
  });
  await book.commit();
}

type StreamedBook = ExcelJS.stream.xlsx.WorkbookWriter;

function openBook(filename: string): StreamedBook {
  return new ExcelJS.stream.xlsx.WorkbookWriter({ filename, useSharedStrings: true, useStyles: true });
}

function addChildren(book: StreamedBook, { birth, gestationDays }: Invented): void {
  const sheet = book.addWorksheet("Children");
  sheet.getColumn(2).numFmt = "yyyy-mm-dd";
  sheet.addRow(["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left"]).commit();
  birth.forEach((born, child) => {
    const cells = [
      `C${child + 1}`,
      serialOf(born, 1900),
      gestationDays[child] || null,
      "North",
      "T1",
      serialOf(born, 1900),
    ];
    sheet.addRow(cells).commit();
  });
}

function addSkills(book: StreamedBook): void {
  const sheet = book.addWorksheet("Skills");
  sheet.addRow(["Skill", "Label", "Area", "Opens", "Closes", "Age basis"]).commit();
  SKILLS.forEach(({ id, label, area, ageBasis }, at) => sheet.addRow([id, label, area, at, at + 4, ageBasis]).commit());
}

/** The age stands there as a number already, which spares the formulas most of their work. */
function addObservations(book: StreamedBook, invented: Invented): void {
  const { child, skill, day, result } = invented.observations;
  const clocks = clocksOf(invented);
  const sheet = book.addWorksheet("Observations");
  sheet.getColumn(3).numFmt = "yyyy-mm-dd";
  sheet.addRow(["Child", "Skill", "Date", "Result", "Months"]).commit();
  child.forEach((who, row) => {
    const on = day[row] as Day;
    const cells = [`C${who + 1}`, `S${skill[row]! + 1}`, serialOf(on, 1900), RESULT_LABELS[result[row]!]];
    sheet.addRow([...cells, ageMonthsOn(clocks[who]!, on)]).commit();
  });
}

/** One row a skill, one column a band: looks with the result met. */
function addCounts(book: StreamedBook, rowCount: number): void {
  const column = (letter: string) => `Observations!$${letter}$2:$${letter}$${rowCount + 1}`;
  const sheet = book.addWorksheet("Counts");
  for (const { id } of SKILLS) {
    const cells = Array.from({ length: EDGES.length + 1 }, (_, band) => {
      const from = band === 0 ? "" : `,${column("E")},">=${EDGES[band - 1]}"`;
      const to = band === EDGES.length ? "" : `,${column("E")},"<${EDGES[band]}"`;
      return { formula: `COUNTIFS(${column("B")},"${id}",${column("D")},"met"${from}${to})`, result: -1 };
    });
    sheet.addRow(cells).commit();
  }
}
