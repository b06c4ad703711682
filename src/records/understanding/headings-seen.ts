import { a1 } from "../../workbook/cells";
import type { SheetIn } from "../../workbook/workbook";
import { headingKey } from "../cells/words";
import { spanAbove } from "../headings/header-cells";
import type { HeaderCell } from "../headings/headings";
import { contentOf } from "./content";
import type { HeadingSeen } from "./understanding";

/** Headings as they stand, with what their cells hold; nothing is taken for anything yet. */
export function headingsSeen(
  sheet: SheetIn,
  cells: readonly HeaderCell[],
  isStacked: boolean,
  rows: Int32Array,
): HeadingSeen[] {
  const counts = new Map<string, number>();
  for (const { text } of cells) counts.set(headingKey(text), (counts.get(headingKey(text)) ?? 0) + 1);
  return cells.map((cell) => {
    const { kind, filled } = contentOf(sheet.grid, cell.column, rows);
    const above = spanAbove(sheet, cell.row, cell.column);
    const isTwice = (counts.get(headingKey(cell.text)) ?? 0) > 1;
    return {
      heading: isTwice && isStacked && above !== "" ? `${above} ${cell.text}` : cell.text,
      cell: a1(cell.row, cell.column),
      means: null,
      skill: null,
      content: kind,
      cells: filled,
      doubtful: false,
      above,
    };
  });
}
