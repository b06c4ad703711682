import { CELL, placeOfA1 } from "../../workbook/cells";
import { sheetAt } from "../../workbook/sources";
import type { WorkbookIn } from "../../workbook/workbook";
import { parseDateText } from "../cells/date-text";
import type { ShortYearMeaning } from "../corrections/settled";
import type { HeadingSeen, SheetTaken, ShortYears } from "./understanding";

/**
 * Dates whose years have two digits, below the headings that are read: 24 is taken for 2024, with doubt. Nothing is read so
 * before a person has confirmed it.
 */
export function shortYearsMet(
  workbook: WorkbookIn,
  sheets: readonly SheetTaken[],
  settled: ShortYearMeaning | undefined,
): ShortYears | null {
  const used = sheets.filter(({ is }) => is !== "not used");
  const met = used.flatMap((sheet) =>
    sheet.headings
      .filter(isRead)
      .map((heading) => ({ heading: heading.heading, cells: cellsOf(workbook, sheet, heading) })),
  );
  const own = met.filter(({ cells }) => cells > 0);
  if (own.length === 0) return null;
  return {
    cells: own.reduce((sum, { cells }) => sum + cells, 0),
    headings: [...new Set(own.map(({ heading }) => heading))],
    means: settled ?? "2000 to 2099",
    doubtful: settled === undefined,
  };
}

function isRead({ means, skill, content }: HeadingSeen): boolean {
  return (means !== null || skill !== null) && (content === "dates" || content === "results");
}

function cellsOf(workbook: WorkbookIn, taken: SheetTaken, { cell }: HeadingSeen): number {
  const grid = sheetAt(workbook, taken)?.grid;
  const cells = grid?.columns[placeOfA1(cell)?.column ?? -1];
  let count = 0;
  for (let row = taken.headerRows.at(-1) ?? 0; cells && row < cells.kinds.length; row += 1) {
    const text = cells.kinds[row] === CELL.text ? (grid?.strings[cells.values[row] as number] ?? "") : "";
    if (text !== "" && parseDateText(text).kind === "two-digit year") count += 1;
  }
  return count;
}
