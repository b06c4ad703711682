import { isoOf } from "../../age/day";
import { dayFromSerial } from "../../age/serial";
import { CELL, kindAt, numberAt } from "../../workbook/cells";
import { type Block, SHEET_COLUMN } from "../headings/block";
import { shownText } from "../cells/cell-text";
import type { EnrolmentRow } from "./enrolment-row";
import type { Reading } from "../rows/reading";
import type { GroupColumn } from "../records";
import { displayOf, headingKey, keyOf, oneSpelling } from "../cells/words";

const KNOWN = [
  ["site", "Site"],
  ["therapist", "Therapist"],
] as const;

/** The columns that children can be grouped by: Site, Therapist, and every column under a heading of its own. */
export function groupColumns(
  reading: Reading,
  blocks: readonly { block: Block }[],
  rows: readonly EnrolmentRow[],
): GroupColumn[] {
  const columns: GroupColumn[] = [];
  for (const [key, heading] of KNOWN) {
    const found = blocks.find(({ block }) => isThere(block, key));
    if (!found) continue;
    const at = found.block.columns.get(key);
    const written = at === undefined ? heading : shownText(found.block.grid, found.block.firstRow - 1, at);
    columns.push({ heading, written, values: spelled(reading, heading, written, rows, (each) => each.value[key]) });
  }
  return [...columns, ...furtherColumns(reading, blocks, rows)];
}

function isThere({ columns, constants, above }: Block, key: string): boolean {
  return columns.has(key) || constants.has(key) || above?.key === key;
}

/** The group column of a heading, through case, spaces, accents and punctuation; also by its heading in the workbook. */
export function findGroupColumn(columns: readonly GroupColumn[], heading: string): GroupColumn | null {
  const key = headingKey(heading);
  return (
    columns.find((column) => keyOf(column.heading) === keyOf(heading)) ??
    columns.find((column) => headingKey(column.heading) === key) ??
    columns.find((column) => headingKey(column.written ?? "") === key && key !== "") ??
    null
  );
}

function furtherColumns(
  reading: Reading,
  blocks: readonly { block: Block }[],
  rows: readonly EnrolmentRow[],
): GroupColumn[] {
  const headings = new Map<string, string>();
  for (const { block } of blocks) {
    for (const { heading } of block.further) {
      const key = keyOf(heading);
      if (!headings.has(key)) headings.set(key, displayOf(heading));
    }
  }
  return [...headings].map(([key, heading]) => ({
    heading,
    values: spelled(reading, heading, heading, rows, (each) => furtherText(reading, each, key)),
  }));
}

/** One spelling for each value: joined as a person settled, and written as most rows write it. */
function spelled(
  reading: Reading,
  heading: string,
  written: string,
  rows: readonly EnrolmentRow[],
  of: (each: EnrolmentRow) => string,
): string[] {
  const joined = rows.map((each) => {
    const value = of(each);
    const key = keyOf(value);
    return reading.decided.name(heading, key) ?? reading.decided.name(written, key) ?? value;
  });
  return oneSpelling(joined);
}

function furtherText(reading: Reading, { block, row }: EnrolmentRow, key: string): string {
  const column = block.further.find((each) => keyOf(each.heading) === key)?.column;
  if (column === undefined) return "";
  if (column === SHEET_COLUMN) return block.sheetName;
  const kind = kindAt(block.grid, row, column);
  if (kind === CELL.error || kind === CELL.noCachedValue) reading.findings.cell("cell-not-read", block, row, column);
  if (kind !== CELL.date) return shownText(block.grid, row, column);
  const day = dayFromSerial(numberAt(block.grid, row, column), block.dateSystem ?? reading.dateSystem);
  return day === null ? "" : isoOf(day);
}
