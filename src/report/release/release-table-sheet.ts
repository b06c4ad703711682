import { isoInWords } from "../../release/words/days";
import { footnoteOf, methodNoteOf } from "../../release/words/footnotes";
import { leadingSentence } from "../../release/words/sentences";
import type { WordsContext } from "../../release/words/words-context";
import type { ReleasedTable } from "../../release/release-table";
import { HIDDEN } from "../../release/release-table";
import type { TableColumn, TableValue } from "../../tables/table";
import type { CellOut, ColumnOut, SheetOut } from "../../workbook/sheets";
import { cellOf, formatOf, headingOf, isText, widthOf } from "../sheets/columns";
import { SheetDraft } from "../sheets/sheet-draft";
import { sheetNameOf } from "../sheets/sheet-plan";
import { printedRows } from "./printed";
import { releasePage } from "./release-page";

/** One table to be read and printed by someone who was not there: what it says, the rows, footnote, method, notes. */
export function releaseTableSheet(table: ReleasedTable, context: WordsContext): SheetOut {
  const rows = printedRows(table, context.skills);
  const draft = new SheetDraft(
    sheetNameOf(table.id),
    table.columns.map((column, at) => columnOf(column, rows, at)),
  );
  draft.spanning(`${table.title}, as of ${isoInWords(context.asOf)}`, "title");
  const asked = context.answered?.find((each) => each.table === table.id)?.figures.find(({ sentence }) => sentence);
  const leading = asked?.sentence ?? leadingSentence(table, context);
  draft.spanning(leading === null ? `${table.population}.` : `${table.population}. ${leading}`, "subtitle");
  const headerRow = draft.rowCount;
  draft.row(table.columns.map(headingCell));
  draft.body(rows.map((row) => row.map((value, at) => bodyCell(value, table.columns[at]!))));
  below(draft, table, context);
  const print = { ...releasePage(context), repeatRows: { first: headerRow, last: headerRow } };
  return draft.finished(print, { frozen: { rows: headerRow + 1, columns: 0 } });
}

function columnOf(column: TableColumn, rows: readonly (readonly TableValue[])[], at: number): ColumnOut {
  const format = formatOf(column);
  return { width: widthOf(column, rows, at), style: isText(column) ? "wrapped" : "text", ...(format && { format }) };
}

function headingCell(column: TableColumn): CellOut {
  return { value: headingOf(column), style: isText(column) ? "heading" : "headingRight" };
}

/** What is held back, or given as a range, is marked by its look too, so that it is never taken for an empty cell. */
function bodyCell(value: TableValue, column: TableColumn): CellOut {
  const isFigure = !isText(column) && typeof value === "string";
  return value === HIDDEN || isFigure ? { value, style: "heldBack" } : cellOf(value, column);
}

function below(draft: SheetDraft, table: ReleasedTable, context: WordsContext): void {
  draft.blank();
  draft.spanning("Footnote", "section");
  draft.spanning(footnoteOf(table, context), "note");
  draft.spanning(methodNoteOf(table), "note");
  draft.spanning("Notes", "section");
  for (const note of table.notes) draft.spanning(note, "note");
}
