import { placeOfA1 } from "../../workbook/cells";
import { sheetAt } from "../../workbook/sources";
import type { WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { keyOf } from "../cells/words";
import type { HeadingSeen, SheetTaken } from "./understanding";

/** So many of the ids of the one side are those of the other: the two columns name the same children. */
const SAME = 0.8;
/** With fewer in common another column is looked for. */
const TOO_FEW = 0.5;

/**
 * Children and checks have to name a child in the same way. Where a column of names was taken on the one side and one of numbers on
 * the other, the column is taken whose cells fit, with doubt. Nothing that a person settled is changed.
 */
export function joinIds(workbook: WorkbookIn, sheets: readonly SheetTaken[]): SheetTaken[] {
  const idsOfAll = (own: readonly SheetTaken[]) =>
    new Set(own.flatMap((each) => [...idsIn(workbook, each, childOf(each))]));
  const isRoster = ({ is }: SheetTaken) => is === "children";
  const isOther = ({ is }: SheetTaken) => is !== "children" && is !== "skills" && is !== "not used";
  const checks = sheets.filter(({ is }) => is === "observations" || is === "grid");
  const rosters = sheets.map((each) => (isRoster(each) ? rejoined(workbook, each, idsOfAll(checks), "theirs") : each));
  const known = idsOfAll(rosters.filter(isRoster));
  return rosters.map((each) => (isOther(each) ? rejoined(workbook, each, known, "own") : each));
}

export function childOf({ headings }: SheetTaken): HeadingSeen | undefined {
  return headings.find(({ means }) => means === "Child");
}

/** @param side - whose ids have to be found on the other side: a roster holds those of the checks, a sheet of checks its own */
function rejoined(
  workbook: WorkbookIn,
  sheet: SheetTaken,
  others: ReadonlySet<string>,
  side: "own" | "theirs",
): SheetTaken {
  const child = childOf(sheet);
  if (!child || others.size === 0 || sheet.why === AS_SETTLED) return sheet;
  const share = (heading: HeadingSeen) => {
    const own = idsIn(workbook, sheet, heading);
    const [of, among] = side === "own" ? [own, others] : [others, own];
    return of.size === 0 ? 0 : [...of].filter((id) => among.has(id)).length / of.size;
  };
  if (share(child) >= TOO_FEW) return sheet;
  const free = sheet.headings.filter(({ means, skill }) => (means === null || means === "Group") && skill === null);
  const better = free.find((each) => each.content !== "dates" && share(each) >= SAME);
  if (!better) return sheet;
  const headings = sheet.headings.map((each) => {
    if (each === better) return { ...each, means: "Child", doubtful: true };
    return each === child ? { ...each, means: null, doubtful: true } : each;
  });
  return { ...sheet, headings };
}

export const AS_SETTLED = "As you settled it.";

/** What stands below a heading, as keys. */
export function idsIn(workbook: WorkbookIn, sheet: SheetTaken, heading: HeadingSeen | undefined): Set<string> {
  const grid = sheetAt(workbook, sheet)?.grid;
  const place = placeOfA1(heading?.cell ?? "");
  const ids = new Set<string>();
  if (!grid || !place) return ids;
  for (let row = sheet.headerRows.at(-1) ?? 0; row < grid.rowCount; row += 1) {
    const key = keyOf(shownText(grid, row, place.column));
    if (key !== "") ids.add(key);
  }
  return ids;
}
