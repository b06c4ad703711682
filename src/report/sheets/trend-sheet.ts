import type { Table } from "../../tables/table";
import type { CellOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { fitOf, landscapePage, periodInWords } from "./page";
import { readTable, type Row, type TableReader } from "./read-table";
import { sentencesOf } from "./sentences/sentences";
import { excelTableName, sheetNameOf } from "./sheet-plan";
import { SheetDraft } from "./sheet-draft";
import { skillsById } from "./skill-words";
import { bodyCell, headingCell, printedColumns } from "./table-sheet";

const QUARTER_CHARACTERS = 16;

/**
 * The trend on paper: a row a skill, a column a quarter, so that a skill is read across and eight quarters take few pages.
 * Right of it, not printed, stands every row of the table in columns of its own, to be sorted and filtered.
 */
export function trendSheet(table: Table, report: Report): SheetOut {
  const read = readTable(table);
  const across = acrossQuarters(table, read, report);
  const rows = printedColumns(table, skillsById(report.print.skills));
  const left = across.headings.length + 1;
  const leadWidths = [...read.groupColumns.slice(0, -1).map(() => 16), 36, 17];
  const draft = new SheetDraft(
    sheetNameOf(table.id),
    [
      ...leadWidths.map((width) => ({ width, style: "wrapped" as const })),
      ...across.quarters.map(() => ({ width: QUARTER_CHARACTERS, style: "wrapped" as const })),
      { width: 3 },
      ...rows.map(({ out }) => out),
    ],
    across.headings.length - 1,
  );
  const [title = table.title] = sentencesOf(table, report);
  draft.spanning(title, "title");
  draft.spanning(`${table.population}. ${periodInWords(report)}. Notes stand below the rows.`, "subtitle");
  const headerRow = draft.rowCount;
  draft.row(
    across.headings.map((value): CellOut => ({ value, style: "heading" })),
    FILTER_BUTTON_POINTS,
  );
  draft.body(across.cells);
  draft.blank();
  draft.spanning("Notes", "section");
  for (const note of [HOW_TO_READ, ...table.notes]) draft.spanning(note, "note");
  const lastNote = draft.rowCount - 1;
  const sheet = draft.finished(
    {
      ...landscapePage(report, headerRow),
      fit: fitOf(draft, across.headings.length - 1),
      area: { top: 0, left: 0, bottom: lastNote, right: across.headings.length - 1 },
    },
    {
      frozen: { rows: headerRow + 1, columns: leadWidths.length },
      tables: [
        {
          name: excelTableName(table),
          range: { top: headerRow, left, bottom: headerRow + table.rows.length, right: left + rows.length - 1 },
        },
      ],
    },
  );
  const longRows = [
    rows.map(headingCell),
    ...table.rows.map((row) => rows.map((column) => bodyCell(column, row, table))),
  ];
  return { ...sheet, rows: rightOf(sheet.rows, longRows, headerRow, left) };
}

const FILTER_BUTTON_POINTS = 15;

const HOW_TO_READ =
  "In each cell: the share met, in brackets how many of those with a current look, below it the limits. Right of what is printed the sheet has the same as a table, a row a quarter and skill.";

interface Across {
  readonly headings: readonly string[];
  readonly quarters: readonly string[];
  readonly cells: readonly (readonly CellOut[])[];
}

function acrossQuarters(table: Table, read: TableReader, report: Report): Across {
  const quarters = [...new Set(table.rows.map((row) => read.text(row, "quarter")))].sort();
  const labels = skillsById(report.print.skills);
  const bySkill = new Map<string, Map<string, Row>>();
  for (const row of table.rows) {
    const key = JSON.stringify([...groupOf(read, row), read.text(row, "skill")]);
    const ofSkill = bySkill.get(key) ?? new Map<string, Row>();
    bySkill.set(key, ofSkill.set(read.text(row, "quarter"), row));
  }
  const cells = [...bySkill.values()].map((ofSkill): CellOut[] => {
    const first = [...ofSkill.values()][0] as Row;
    const skill = read.text(first, "skill");
    return [
      ...groupOf(read, first),
      labels.get(skill)?.label ?? skill,
      read.text(first, "area"),
      ...quarters.map((quarter) => quarterCell(read, ofSkill.get(quarter))),
    ];
  });
  const groups = read.groupColumns.slice(0, -1).map(({ label }) => label);
  return { headings: [...groups, "Skill", "Area", ...quarters], quarters, cells };
}

/** The grouping columns come before the quarter. */
function groupOf(read: TableReader, row: Row): string[] {
  return read.group(row).slice(0, -1);
}

/** `92.2% (47 of 51)`, and below it `81.5% to 97.0%`. */
function quarterCell(read: TableReader, row: Row | undefined): string | null {
  if (!row) return null;
  const of = read.number(row, "assessed") ?? 0;
  if (of === 0) return "no current look";
  const percent = (key: string) => `${(100 * (read.number(row, key) ?? 0)).toFixed(1)}%`;
  return `${percent("shareMet")} (${read.number(row, "met")} of ${of})\n${percent("lower")} to ${percent("upper")}`;
}

/** The sheet's rows with those of a block beginning at a row and column; rows are added where they do not suffice. */
function rightOf(
  rows: readonly (readonly CellOut[])[],
  block: readonly (readonly CellOut[])[],
  top: number,
  left: number,
): CellOut[][] {
  const count = Math.max(rows.length, top + block.length);
  return Array.from({ length: count }, (_, row) => {
    const own = [...(rows[row] ?? [])];
    const beside = block[row - top];
    if (!beside) return own;
    while (own.length < left) own.push(null);
    return [...own, ...beside];
  });
}
