import type { Skill } from "../../records/records";
import type { Table, TableColumn, TableValue } from "../../tables/table";
import type { CellOut, ColumnOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { cellOf, formatOf, headingOf, isText, widthOf } from "./columns";
import { fitOf, landscapePage, periodInWords } from "./page";
import { ALL_SKILLS, type Row } from "./read-table";
import { sentencesOf } from "./sentences/sentences";
import { excelTableName, sheetNameOf } from "./sheet-plan";
import { SheetDraft } from "./sheet-draft";
import { basisInWords, shortBasisInWords, skillsById, windowInWords } from "./skill-words";

/** One table as a sheet to be read and printed: the finding, who is counted and when, the rows, the notes. */
export function tableSheet(table: Table, report: Report): SheetOut {
  const printed = printedColumns(table, skillsById(report.print.skills));
  const lastPrinted = printed.filter(({ onPaper }) => onPaper).length - 1;
  const draft = new SheetDraft(
    sheetNameOf(table.id),
    printed.map(({ out }) => out),
    lastPrinted,
  );
  const internal = table.internal === true;
  const [title = table.title] = sentencesOf(table, report);
  draft.spanning(internal ? `Internal: ${title}` : title, "title");
  draft.spanning(`${table.population}. ${periodInWords(report)}. Notes are below the rows.`, "subtitle");
  const headerRow = draft.rowCount;
  draft.row(printed.map(headingCell), FILTER_BUTTON_POINTS);
  draft.body(table.rows.map((row, at) => printed.map((column) => bodyCell(column, row, table, table.rows[at - 1]))));
  const lastRow = draft.rowCount - 1;
  notes(draft, table, printed);
  const area = { top: 0, left: 0, bottom: draft.rowCount - 1, right: lastPrinted };
  return draft.finished(
    { ...landscapePage(report, headerRow, internal), fit: fitOf(draft, lastPrinted), area },
    {
      frozen: { rows: headerRow + 1, columns: frozenColumns(printed) },
      tables: [
        {
          name: excelTableName(table),
          range: { top: headerRow, left: 0, bottom: lastRow, right: printed.length - 1 },
        },
      ],
    },
  );
}

const FILTER_BUTTON_POINTS = 15;
/** A column as printed: one of the table's, or one that explains another. */
interface PrintedColumn {
  readonly heading: string;
  readonly text: boolean;
  /** False: on the screen only, right of what is printed. */
  readonly onPaper: boolean;
  readonly out: ColumnOut;
  readonly value: (row: Row) => CellOut;
}

function printedColumns(table: Table, skills: ReadonlyMap<string, Skill>): PrintedColumn[] {
  const columns = table.columns.flatMap((column, index) => {
    const own = ownColumn(column, index, table);
    const skillAt = table.columns.findIndex(({ key }) => key === "skill");
    const skillOf = (row: Row) => skills.get(String(row[skillAt] ?? ""));
    if (column.key === "skill")
      return [labelColumn(table, index, skillOf), { ...own, heading: "Skill id", onPaper: false }];
    if (column.key === "expectedShare") return [own, windowColumn(SHORT_BASIS_HEADING, skillOf, shortBasisInWords, 28)];
    if (column.key === "window")
      return [own, windowColumn("Skill's window and its basis", skillOf, windowAndBasis, 42)];
    return [own];
  });
  return [...columns.filter(({ onPaper }) => onPaper), ...columns.filter(({ onPaper }) => !onPaper)];
}

function ownColumn(column: TableColumn, index: number, table: Table): PrintedColumn {
  const format = formatOf(column);
  const style = WRAPPED_KEYS.has(column.key) ? "wrapped" : "text";
  return {
    heading: headingOf(column),
    text: isText(column),
    onPaper: !SCREEN_ONLY.has(column.key),
    out: { width: widthOf(column, table.rows, index), style, ...(format && { format }) },
    value: (row) => cellOf(row[index] as TableValue, column),
  };
}

/** What few need on paper, and would make its print too small to read. */
const SCREEN_ONLY: ReadonlySet<string> = new Set([
  "method",
  "largestGradient",
  "p10",
  "p25",
  "p90",
  "shareByCloseLower",
  "shareByCloseUpper",
  "funnel95Lower",
  "funnel95Upper",
  "funnel998Lower",
  "funnel998Upper",
]);

const WRAPPED_KEYS: ReadonlySet<string> = new Set(["reason", "nextStep", "method", "lost"]);

type SkillOf = (row: Row) => Skill | undefined;

function labelColumn(table: Table, index: number, skillOf: SkillOf): PrintedColumn {
  const value = (row: Row) =>
    row[index] === ALL_SKILLS ? "All of the area (skill checks)" : (skillOf(row)?.label ?? String(row[index] ?? ""));
  const longest = table.rows.reduce((most, row) => Math.max(most, value(row).length), 0);
  const crowded = table.columns.length > MANY_COLUMNS || table.columns.some(({ key }) => EXPLAINED.has(key));
  return {
    heading: "Skill",
    text: true,
    onPaper: true,
    out: { width: Math.min(Math.max(longest + 2, 14), crowded ? 36 : 60), style: "wrapped" },
    value,
  };
}

const MANY_COLUMNS = 12;

/** Their explanations take several lines, so that labels may too. */
const EXPLAINED: ReadonlySet<string> = new Set(["expectedShare", "window"]);

function windowColumn(
  heading: string,
  skillOf: SkillOf,
  words: (skill: Skill) => string,
  width: number,
): PrintedColumn {
  const value = (row: Row) => {
    const skill = skillOf(row);
    return skill ? words(skill) : null;
  };
  return { heading, text: true, onPaper: true, out: { width, style: "wrapped" }, value };
}

function windowAndBasis(skill: Skill): string {
  return `${windowInWords(skill)} (${basisInWords(skill)})`;
}

function headingCell({ heading, text }: PrintedColumn): CellOut {
  return { value: heading, style: text ? "heading" : "headingRight" };
}

/** Rows of skill checks look apart from rows of children, besides saying so. A skill is named once, and pale where repeated. */
function bodyCell(column: PrintedColumn, row: Row, table: Table, above: Row | undefined): CellOut {
  const value = column.value(row);
  const skill = row[table.columns.findIndex(({ key }) => key === "skill")];
  if (skill !== ALL_SKILLS) return isRepeated(column, row, above) ? { value: String(value), style: "repeated" } : value;
  const plain = typeof value === "object" && value !== null ? value.value : value;
  return { value: plain, style: "total", ...(column.out.format && { format: column.out.format }) };
}

/** Sorting and filtering need the words in every row. */
function isRepeated({ heading, value }: PrintedColumn, row: Row, above: Row | undefined): boolean {
  return heading === "Skill" && above !== undefined && value(row) === value(above);
}

function frozenColumns(printed: readonly PrintedColumn[]): number {
  return printed.findIndex(({ heading }) => heading === "Skill") + 1;
}

function notes(draft: SheetDraft, table: Table, printed: readonly PrintedColumn[]): void {
  draft.blank();
  draft.spanning("Notes", "section");
  for (const note of table.notes) draft.spanning(note, "note");
  const beside = printed.filter(({ onPaper }) => !onPaper).map(({ heading }) => heading);
  if (beside.length > 0) draft.spanning(`On the sheet, right of what is printed: ${beside.join("; ")}.`, "note");
  if (printed.some(({ heading }) => heading === SHORT_BASIS_HEADING)) {
    draft.spanning("The sheet Method has the whole source of each window.", "note");
  }
  draft.spanning("An empty cell: the figure cannot be estimated, or the row has none.", "note");
}

const SHORT_BASIS_HEADING = "Basis of the window, in short";
