import { CELL, type Grid } from "../../workbook/cells";

const MOST_GROUPS = 40;
/** Four digits or more: an id, a phone number, a year-month-day. A year alone may be a group. */
export const LOOKS_LIKE_ID = /\d(?:[\d-]){3,}(?<!^(?:19|20)\d\d)/;
const LONGEST_NAME = 40;
/** So few cells prove nothing. */
const FEWEST_CELLS = 4;
/** Below so many filled cells a column of different texts may still be one of groups. */
const FEW_CELLS = 12;

/** Headings of what tells who a child is, or of free text: such a column never groups, however few its values are. */
const NEVER_GROUPS =
  /\b(first|last|middle|sur|full|child|kid|client|parent|mother|father|mom|dad|guardian)('?s)? ?names?\b|^(names?|initials|nombres?|apellidos?|mother|father|mom|dad|parents?|guardians?)$|\b(phone|tel|cell|e?mail|address|street|ssn|mrn|notes?|remarks?|comments?|notas?)\b/i;

/** Whether a heading names something that children are never grouped by. */
export function neverGroups(heading: string): boolean {
  return NEVER_GROUPS.test(heading.trim());
}

/**
 * Whether a column can be one to group children by: few values, each several times, no dates and no free text. Ids, phone
 * numbers, birth dates and notes are none.
 */
export function canGroup(grid: Grid, column: number, rows: Int32Array): boolean {
  const cells = grid.columns[column];
  if (!cells) return false;
  const values = new Set<string>();
  let filled = 0;
  for (const row of rows) {
    const kind = cells.kinds[row] ?? CELL.empty;
    if (kind === CELL.date) return false;
    if (kind !== CELL.text && kind !== CELL.number && kind !== CELL.boolean) continue;
    const value = cells.values[row] as number;
    const text = kind === CELL.text ? (grid.strings[value] as string).trim().toLowerCase() : String(value);
    if (text === "") continue;
    if (text.length > LONGEST_NAME || LOOKS_LIKE_ID.test(text) || values.size > MOST_GROUPS) return false;
    filled += 1;
    values.add(text);
  }
  return isFewEnough(values.size, filled);
}

/** Few values, each several times; in a short list any that come more than once. */
export function isFewEnough(values: number, filled: number): boolean {
  if (values > MOST_GROUPS) return false;
  return values * 2 <= filled || (filled < FEW_CELLS && (values < filled || filled <= FEWEST_CELLS));
}
