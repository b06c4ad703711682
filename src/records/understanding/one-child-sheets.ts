import { sheetAt } from "../../workbook/sources";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { headingKey, keyOf } from "../cells/words";
import { SHEET_NAME, type SheetKind } from "../corrections/settled";
import { rowsOf } from "../headings/block";
import { headerCells } from "../headings/header-cells";
import { LIKELY, plainWords } from "../headings/likely";
import { guessHeadings } from "./guess-headings";
import { childOf, idsIn } from "./join-ids";
import { specOfKind } from "./kinds";
import { headingsSeen } from "./headings-seen";
import type { HeadingSeen, SheetTaken } from "./understanding";
import { virtualHeading } from "./virtual-headings";

const ROWS_LOOKED_AT = 40;
const FEWEST_SHEETS = 2;

/**
 * Sheets that are named as children of the list, each with the checks of that child: the name of the sheet stands for the
 * child, with doubt. Where there is no list of children, sheets that look like forms of one child each say what to do.
 */
export function sheetsOfOneChild(
  workbook: WorkbookIn,
  sheets: readonly SheetTaken[],
  known: readonly string[],
): SheetTaken[] {
  const rosters = sheets.filter(({ is }) => is === "children");
  const ids = new Set(rosters.flatMap((each) => [...idsIn(workbook, each, childOf(each))]));
  const named = sheets.filter(({ is, sheet }) => is === "not used" && ids.has(keyOf(sheet)));
  if (rosters.length === 0) return sayForms(workbook, sheets);
  if (named.length < FEWEST_SHEETS) return [...sheets];
  return sheets.map((each) => (named.includes(each) ? (ofOneChild(workbook, each, known) ?? each) : each));
}

/** The first row below which checks can be read, without a heading that names the child. */
function ofOneChild(workbook: WorkbookIn, taken: SheetTaken, known: readonly string[]): SheetTaken | null {
  const sheet = sheetAt(workbook, taken) as SheetIn;
  for (let row = 0; row < Math.min(ROWS_LOOKED_AT, sheet.grid.rowCount - 1); row += 1) {
    const cells = headerCells(sheet, row, 1, 0, sheet.grid.columns.length - 1);
    if (cells.length < FEWEST_SHEETS) continue;
    const columns = cells.map(({ column }) => column);
    const range = {
      top: row,
      left: Math.min(...columns),
      bottom: sheet.grid.rowCount - 1,
      right: Math.max(...columns),
    };
    const { rows } = rowsOf(sheet.grid, range, row + 1, null);
    const seen = headingsSeen(sheet, cells, false, rows);
    const is = (["observations", "grid"] as const).find((kind) => isWhole(kind, guessHeadings(kind, seen, known)));
    if (!is || rows.length === 0) continue;
    const name = { ...virtualHeading(SHEET_NAME, rows.length), means: "Child", doubtful: true };
    const headings = [...guessHeadings(is, seen, known), name];
    const why = "Its name is a child of the list, and it has checks.";
    return { ...taken, is, why, doubtful: true, headerRows: [row + 1], rows: rows.length, headings };
  }
  return null;
}

/** All that such a sheet needs but the child; a grid needs its days. */
function isWhole(is: SheetKind, headings: readonly HeadingSeen[]): boolean {
  const has = (column: string) => headings.some(({ means, skill }) => means === column && skill === null);
  const needed = (specOfKind(is)?.columns ?? []).filter(({ required, key }) => required && key !== "child");
  if (has("Child") || !needed.every(({ heading }) => has(heading))) return false;
  return is !== "grid" || (has("Date") && headings.some(({ skill }) => skill !== null));
}

/** Several sheets with the same labels in their first column, a birth date among them. */
function sayForms(workbook: WorkbookIn, sheets: readonly SheetTaken[]): SheetTaken[] {
  const labels = new Map(
    sheets.flatMap((each) => (each.is === "not used" ? [[each, labelsOf(workbook, each)] as const] : [])),
  );
  const all = [...labels.values()].filter((each) => each !== "");
  return sheets.map((each) => {
    const own = labels.get(each) ?? "";
    if (own === "" || all.filter((other) => other === own).length < FEWEST_SHEETS) return each;
    return { ...each, why: FORM, doubtful: true };
  });
}

const FORM =
  "It looks like the sheet of one child. Add a sheet with one row per child: the name of its sheet under Child, its Birth date, and what else you have. These sheets are then read by their names.";

function labelsOf(workbook: WorkbookIn, taken: SheetTaken): string {
  const { grid } = sheetAt(workbook, taken) as SheetIn;
  const texts = Array.from({ length: Math.min(10, grid.rowCount) }, (_, row) => shownText(grid, row, 0));
  const isForm = texts.some((text) => LIKELY.Children.birth?.pattern.test(plainWords(text)));
  return isForm ? texts.slice(0, 4).map(headingKey).join("|") : "";
}
