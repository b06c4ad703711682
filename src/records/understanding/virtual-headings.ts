import { sheetAt } from "../../workbook/sources";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { placeOfA1 } from "../../workbook/cells";
import { rowsOf } from "../headings/block";
import { rowTitles } from "../headings/row-titles";
import { GROUP, ROW_TITLE, SHEET_DAY, SHEET_NAME } from "../corrections/settled";
import { dayOfSheet } from "../headings/day-of-sheet";
import { AS_SETTLED } from "./join-ids";
import type { HeadingSeen, SheetTaken } from "./understanding";

/** A heading that stands on no cell: the name of the sheet (which therapist, or which site), or the day of its checks. */
export function virtualHeading(heading: string, rows: number): HeadingSeen {
  return {
    heading,
    cell: "",
    means: null,
    skill: null,
    content: heading === SHEET_DAY ? "dates" : "few words",
    cells: rows,
    doubtful: false,
    above: "",
  };
}

/** Rows that hold one text and nothing else, above rows of children: most likely the site, or who follows them. */
export function withRowTitles(workbook: WorkbookIn, each: SheetTaken): SheetTaken {
  if (each.is !== "children" || each.why === AS_SETTLED || each.headings.some(({ cell }) => cell === "")) return each;
  const { grid } = sheetAt(workbook, each) as SheetIn;
  const columns = each.headings.map(({ cell }) => placeOfA1(cell)?.column ?? 0);
  const [left, right] = [Math.min(...columns), Math.max(...columns)];
  const { rows } = rowsOf(grid, { top: 0, left, right, bottom: grid.rowCount - 1 }, each.headerRows.at(-1) ?? 0, null);
  const count = rowTitles(grid, left, right, rows).size;
  if (count < FEWEST_TITLES) return each;
  const has = (column: string) => each.headings.some(({ means }) => means === column);
  const means = has("Site") ? (has("Therapist") ? null : "Therapist") : "Site";
  const why = `${each.why} ${count} rows have a title and nothing else.`;
  const titles = { ...virtualHeading(ROW_TITLE, count), means, doubtful: true };
  return { ...each, why, doubtful: true, rows: each.rows - count, headings: [...each.headings, titles] };
}

const FEWEST_TITLES = 2;

/** A grid of results in which no column has days: its checks were made on one day, which its title may say. */
export function withDay(workbook: WorkbookIn, each: SheetTaken): SheetTaken {
  const { headings } = each;
  if (each.is !== "grid" || headings.some(({ means }) => means === "Date")) return each;
  if (!headings.some(({ skill, content }) => skill !== null && content !== "dates" && content !== "nothing"))
    return each;
  const sheet = sheetAt(workbook, each) as SheetIn;
  const means = dayOfSheet(sheet, (each.headerRows[0] ?? 1) - 1, sheet.dateSystem ?? workbook.dateSystem);
  const settled = headings.find(({ heading }) => heading === SHEET_DAY);
  if (settled) return means === null || means === settled.means ? each : withOtherDay(each, settled, means);
  const why =
    means === null
      ? `${each.why} No column says the day of the checks: give it.`
      : `${each.why} No column says the day of the checks; its title or name says ${means}.`;
  return { ...each, why, headings: [...headings, { ...virtualHeading(SHEET_DAY, each.rows), means, doubtful: true }] };
}

/** The title says another day than the one that was settled: a person has to look. */
function withOtherDay(each: SheetTaken, settled: HeadingSeen, said: string): SheetTaken {
  const why = `${each.why} Its title now says ${said}, and you gave ${settled.means ?? "no day"}: choose the day of the checks.`;
  const headings = each.headings.map((heading) => (heading === settled ? { ...heading, doubtful: true } : heading));
  return { ...each, why, doubtful: true, headings };
}

/**
 * Where several sheets of children have the same columns, in whatever order, and none names the therapist, the sheets may be one for each: it is
 * offered, with doubt.
 */
export function nameSheets(sheets: readonly SheetTaken[]): SheetTaken[] {
  const layout = (each: SheetTaken) =>
    each.headings
      .flatMap(({ cell, means }) => (cell === "" || means === null || means === GROUP ? [] : [means]))
      .sort()
      .join("|");
  const children = sheets.filter(({ is }) => is === "children");
  return sheets.map((each) => {
    if (each.is !== "children" || each.headings.some(({ heading }) => heading === SHEET_NAME)) return each;
    const alike = children.filter((other) => other.file === each.file && layout(other) === layout(each));
    const hasTherapist = each.headings.some(({ means }) => means === "Therapist");
    if (alike.length < 2 || each.why === AS_SETTLED) return each;
    const isYear = alike.some(({ sheet }) => /\b(19|20)\d\d\b/.test(sheet));
    const means = hasTherapist || isYear ? null : "Therapist";
    return {
      ...each,
      headings: [...each.headings, { ...virtualHeading(SHEET_NAME, each.rows), means, doubtful: means !== null }],
    };
  });
}
