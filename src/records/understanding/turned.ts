import { sheetAt } from "../../workbook/sources";
import type { WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { keyOf } from "../cells/words";
import { AS_SETTLED, childOf, idsIn } from "./join-ids";
import type { SheetTaken } from "./understanding";

const ROWS_LOOKED_AT = 10;
const FEWEST_CHILDREN = 3;

const WHY =
  "The children are across its top, one column each. Windowline reads one row per child: copy the table, paste it turned (Paste Special, Transpose) on a new sheet, and read again.";

/** A sheet with children across its top is not used, and says how to turn it. Its headings, which are ids, are not kept. */
export function sayTurned(workbook: WorkbookIn, sheets: readonly SheetTaken[]): SheetTaken[] {
  const rosters = sheets.filter(({ is }) => is === "children");
  const children = new Set(rosters.flatMap((each) => [...idsIn(workbook, each, childOf(each))]));
  if (children.size < FEWEST_CHILDREN) return [...sheets];
  return sheets.map((each) => {
    if (each.is === "children" || each.why === AS_SETTLED || !isTurned(workbook, each, children)) return each;
    return { ...each, is: "not used", why: WHY, doubtful: true, headerRows: [], headings: [] };
  });
}

function isTurned(workbook: WorkbookIn, sheet: SheetTaken, children: ReadonlySet<string>): boolean {
  const grid = sheetAt(workbook, sheet)?.grid;
  if (!grid) return false;
  for (let row = 0; row < Math.min(ROWS_LOOKED_AT, grid.rowCount); row += 1) {
    const keys = grid.columns.map((_, column) => keyOf(shownText(grid, row, column))).filter((key) => key !== "");
    const ids = new Set(keys.filter((key) => children.has(key)));
    if (ids.size >= FEWEST_CHILDREN && ids.size * 2 >= keys.length) return true;
  }
  return false;
}
