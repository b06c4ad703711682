import { type Day, isoOf } from "../../age/day";
import { type DateSystem, dayFromSerial } from "../../age/serial";
import { CELL } from "../../workbook/cells";
import type { SheetIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { parseDateText } from "../cells/date-text";

const DATE_IN_TEXT =
  /\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{4}|[a-z]{3,9}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4}|\d{1,2} [a-z]{3,9} \d{4}/gi;
const MONTHS = 12;

/**
 * The one day that the title of a sheet, above its headings, or its name says, as ISO text; null where they say none, two, or one
 * of which day and month cannot be told apart.
 *
 * @param above - how many rows stand above the headings
 */
export function dayOfSheet(sheet: SheetIn, above: number, system: DateSystem): string | null {
  const days = new Set<number | null>(daysInText(sheet.name));
  sheet.grid.columns.forEach((cells, column) => {
    for (let row = 0; cells && row < above; row += 1) {
      if (cells.kinds[row] === CELL.text)
        daysInText(shownText(sheet.grid, row, column)).forEach((day) => days.add(day));
      if (cells.kinds[row] === CELL.date) days.add(dayFromSerial(cells.values[row] as number, system));
    }
  });
  const [only] = [...days];
  return days.size === 1 && only ? isoOf(only) : null;
}

/** The day that a title says, where a person settled another one for the checks of the sheet; null where they agree. */
export function otherDayInTitle(sheet: SheetIn, above: number, system: DateSystem, settled: Day | null): string | null {
  const said = dayOfSheet(sheet, above, system);
  return settled !== null && said !== null && said !== isoOf(settled) ? said : null;
}

function daysInText(text: string): (number | null)[] {
  return (text.match(DATE_IN_TEXT) ?? []).map((each) => {
    const date = parseDateText(each);
    if (date.kind === "day") return date.day;
    if (date.kind !== "parts") return null;
    const { first, second, year } = date;
    const iso = (month: number, day: number) =>
      parseDateText(`${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`);
    const told = second > MONTHS ? iso(first, second) : first > MONTHS || first === second ? iso(second, first) : null;
    return told?.kind === "day" ? told.day : null;
  });
}
