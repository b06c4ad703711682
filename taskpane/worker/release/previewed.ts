import { answersIn } from "../../../src/release/answers/answer";
import { questionOfTable } from "../../../src/release/answers/questions";
import { isoInWords } from "../../../src/release/words/days";
import type { PreparedRelease } from "../../../src/release/prepared";
import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../../../src/release/release-table";
import { footnoteOf, methodNoteOf } from "../../../src/release/words/footnotes";
import { isRange, readReleased } from "../../../src/release/words/read-released";
import { sentencesOf } from "../../../src/release/words/sentences";
import type { WordsContext } from "../../../src/release/words/words-context";
import { answerPassages } from "../../../src/report/release/answer-passages";
import { countsPrinted } from "../../../src/report/release/counts-printed";
import { printedRows } from "../../../src/report/release/printed";
import { formatOf, headingOf, isText } from "../../../src/report/sheets/columns";
import { sheetNameOf } from "../../../src/report/sheets/sheet-plan";
import { counted } from "../../../src/words/numbers";
import type { TableColumn, TableValue } from "../../../src/tables/table";
import type { CellFormat } from "../../../src/workbook/sheets";
import type { PreviewRow, ReleasedPreview, ReleaseMade } from "./released";

/** Rows, and sentences, that cross to the pane at a time. */
export const ROWS_A_PART = 40;
export const SENTENCES_A_PART = 12;

/** A released table in text, row by row and sentence by sentence. */
export interface PreviewedTable {
  readonly table: ReleasedTable;
  readonly rows: readonly PreviewRow[];
  readonly sentences: readonly string[];
}

export function previewed(table: ReleasedTable, context: WordsContext): PreviewedTable {
  const { columns } = table;
  const names = nameCount(table);
  const named = namedAt(table);
  const { groupCount } = readReleased(table);
  const rows = printedRows(table, context.skills).map((row) => ({
    name: textOf(row[named] ?? null),
    group: groupOf(row.slice(0, names), columns, groupCount, named),
    figures: row.slice(names).map((value, at) => figureText(value, columns[names + at] as TableColumn)),
  }));
  return { table, rows, sentences: sentencesOf(table, context).map(({ text }) => text) };
}

export function previewOf({ table, rows, sentences }: PreviewedTable, context: WordsContext): ReleasedPreview {
  return {
    id: table.id,
    name: sheetNameOf(table.id),
    title: table.title,
    population: table.population,
    named: headingOf(table.columns[namedAt(table)] as TableColumn),
    headings: table.columns.slice(nameCount(table)).map(headingOf),
    counts: { rows: rows.length, sentences: sentences.length },
    rows: rows.slice(0, ROWS_A_PART),
    sentences: sentences.slice(0, SENTENCES_A_PART),
    footnote: footnoteOf(table, context),
    method: methodNoteOf(table),
    notes: table.notes,
  };
}

export function madeOf(
  release: PreparedRelease,
  tables: readonly PreviewedTable[],
  context: WordsContext,
  earlier: number | null,
): ReleaseMade {
  const { asOf, from, rule, protection, attack, flags, notCovered } = release;
  const wanted =
    context.answered ??
    answersIn(
      release.tables.map(({ id }) => questionOfTable(id)),
      release,
      context,
    );
  const figures = wanted.flatMap((each) => each.figures);
  return {
    label: isoInWords(asOf),
    period: `${isoInWords(from)} to ${isoInWords(asOf)}`,
    stem: `release-${asOf}`,
    rule,
    protection,
    printed: countsPrinted(release.tables),
    answers: answerPassages(release.tables, context).map(({ heading, lines }) => ({ asks: heading, lines })),
    shares: { shown: figures.filter(({ sentence }) => sentence !== null).length, wanted: figures.length },
    attack,
    tables: tables.map((each) => previewOf(each, context)),
    flags,
    notCovered,
    earlier,
  };
}

/** The columns before the first figure; an age names its row. */
function nameCount({ columns }: ReleasedTable): number {
  const first = columns.findIndex((column) => !isText(column) && column.key !== "age");
  return first < 0 ? columns.length : Math.max(1, first);
}

/** What tells a row from its neighbours; the rest of its names it shares with them. */
const NAMING = ["band", "age", "value", "step", "outcome", "skill"] as const;

function namedAt({ columns }: ReleasedTable): number {
  const keys = columns.map(({ key }) => key);
  return Math.max(0, keys.indexOf(NAMING.find((key) => keys.includes(key)) ?? ""));
}

/** The table's own names come first, then those that the user grouped by. */
function groupOf(
  names: readonly TableValue[],
  columns: readonly TableColumn[],
  groupCount: number,
  named: number,
): string {
  const texts = names.map((value, at) =>
    at < groupCount ? `${columns[at]?.label ?? ""} ${textOf(value) || "not recorded"}` : textOf(value),
  );
  const own = texts.filter((text, at) => at >= groupCount && at !== named && text !== "");
  return [...own, ...texts.slice(0, groupCount)].join(", ");
}

function figureText(value: TableValue, column: TableColumn): string {
  if (typeof value !== "number") return textOf(value);
  return numberText(value, formatOf(column));
}

function textOf(value: ReleasedValue): string {
  if (value === null) return "";
  if (value === HIDDEN || isRange(value)) return String(value);
  return typeof value === "boolean" ? (value ? "yes" : "no") : String(value);
}

const DECIMALS: Partial<Record<CellFormat, number>> = { months: 1, decimal2: 2, decimal3: 3 };

function numberText(value: number, format: CellFormat | null): string {
  if (format === "share" || format === "wholeShare") return `${(100 * value).toFixed(1)}%`;
  if (format === "percent") return `${value.toFixed(1)}%`;
  const decimals = format === null ? undefined : DECIMALS[format];
  return decimals === undefined || Number.isInteger(value) ? counted(value) : value.toFixed(decimals);
}
