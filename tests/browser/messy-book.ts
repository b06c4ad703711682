import ExcelJS from "exceljs";

/**
 * A workbook as a small invented program keeps it, from a plan that also tells the truth: a cover, everyday headings, two
 * grids of own skills with marks under headings over two rows, total rows, a note in the margin, one child entered twice.
 */
export interface MessyBook {
  readonly bytes: Buffer;
  /** Children in the program on the as-of date, the one entered twice counted once. */
  readonly children: number;
  /** Pairs of a child in the program and a skill, all checked last in August. */
  readonly skillChecks: number;
  /** Those of them marked Y then. */
  readonly met: number;
  readonly asOf: string;
}

const CHILDREN = 24;
const GRIDS = [
  { sheet: "Motor", area: "Gross motor", skills: ["Rolls over", "Sits alone", "Walks alone", "Climbs stairs"] },
  { sheet: "Words", area: "Communication", skills: ["Babbles", "Says first word", "Points to ask", "Joins two words"] },
] as const;
const MARKS = ["Y", "Y", "E", "N"] as const;
const ROUNDS = ["2026-05-12", "2026-08-18"] as const;

export async function messyBook(): Promise<MessyBook> {
  const book = new ExcelJS.Workbook();
  book.addWorksheet("Cover").addRows([["Thistle Lane early years"], [], ["Please do not change the colors."]]);
  const kids = book.addWorksheet("Kids");
  kids.addRow(["Active list, kept by the front desk"]);
  kids.addRow([]);
  kids.addRow(["Kid #", "DOB", "Wks early", "Clinic", "Worker", "Intake", "Exit"]);
  for (let at = 0; at < CHILDREN; at += 1) kids.addRow(kidRow(at));
  // The sixth child again, the hyphen left out.
  kids.addRow([idOf(5).replace("-", ""), ...kidRow(5).slice(1)]);
  kids.addRow([`Total children ${CHILDREN + 1}`]);
  const staying = Array.from({ length: CHILDREN }, (_, at) => at).filter((at) => !LEFT.includes(at));
  let [skillChecks, met] = [0, 0];
  for (const { sheet, area, skills } of GRIDS) {
    const grid = book.addWorksheet(sheet);
    grid.addRow(["", "", area]);
    grid.mergeCells(1, 3, 1, 2 + skills.length);
    grid.addRow(["Kid #", "Visit", ...skills]);
    for (const round of ROUNDS) {
      for (let at = 0; at < CHILDREN; at += 1) {
        grid.addRow([idOf(at), day(round), ...skills.map((_, skill) => markOf(at, skill, round))]);
      }
    }
    for (const at of staying) {
      skillChecks += skills.length;
      met += skills.filter((_, skill) => markOf(at, skill, ROUNDS[1]) === "Y").length;
    }
    grid.addRow(["Total", null, ...skills.map(() => CHILDREN)]);
    grid.getCell(4, 4 + skills.length).value = "ask Dana about this row";
  }
  return {
    bytes: Buffer.from(await book.xlsx.writeBuffer()),
    children: staying.length,
    skillChecks,
    met,
    asOf: "2026-09-30",
  };
}

/** Two children left before the day. */
const LEFT = [3, 11];

function kidRow(at: number): (string | number | Date | null)[] {
  const born = new Date(Date.UTC(2024, 0, 10 + at * 17));
  const site = at % 3 === 0 ? "Eastside" : at === 7 ? "eastside " : "Mill Street";
  const early = at % 5 === 0 ? 6 : null;
  const left = LEFT.includes(at) ? day("2026-07-15") : null;
  return [idOf(at), born, early, at === 8 ? "Mill St" : site, at % 2 === 0 ? "T1" : "T2", day("2025-10-01"), left];
}

function idOf(at: number): string {
  return `K-${String(at + 1).padStart(2, "0")}`;
}

function day(iso: string): Date {
  return new Date(`${iso}T00:00:00Z`);
}

/** A child that has met a skill keeps it. */
function markOf(at: number, skill: number, round: string): string {
  const first = MARKS[(at + skill) % MARKS.length] as string;
  return round === ROUNDS[0] || first === "Y" ? first : "E";
}
