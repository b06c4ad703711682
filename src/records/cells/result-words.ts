import { CELL, type Grid } from "../../workbook/cells";
import { RESULT } from "../records";
import { RESULT_WORDS } from "../tables/observations";
import { isBlankText, keyOf } from "./words";

export const RESULT_CODE = { blank: 10, unknown: 11, error: 12, noValue: 13 } as const;

const CODES = new Map<string, number>(
  (Object.keys(RESULT) as (keyof typeof RESULT)[]).flatMap((result) =>
    RESULT_WORDS[result].map((word) => [resultKey(word), RESULT[result]] as const),
  ),
);

/** The result of a text, or null where it is none of the four. */
export function resultOf(text: string): number | null {
  return CODES.get(resultKey(text)) ?? null;
}

/** A slash counts: N/O, not observed, is not the word no. */
function resultKey(text: string): string {
  return keyOf(text)
    .replace(/[\s_.-]+/g, " ")
    .trim();
}

/** Reads a column of results, each distinct text looked up once. A number 0 is a blank. */
export function readResultColumn(grid: Grid, column: number, rows: Int32Array): Uint8Array {
  const results = new Uint8Array(rows.length).fill(RESULT_CODE.blank);
  const cells = grid.columns[column];
  if (!cells) return results;
  const byText = new Uint8Array(grid.strings.length).fill(255);
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number;
    const kind = cells.kinds[row] ?? CELL.empty;
    if (kind === CELL.empty) continue;
    const value = cells.values[row] as number;
    if (kind === CELL.text) {
      let code = byText[value] as number;
      if (code === 255) code = byText[value] = codeOfText(grid.strings[value] as string);
      results[i] = code;
    } else results[i] = codeOfKind(kind, value);
  }
  return results;
}

function codeOfText(text: string): number {
  return isBlankText(text) ? RESULT_CODE.blank : (resultOf(text) ?? RESULT_CODE.unknown);
}

function codeOfKind(kind: number, value: number): number {
  if (kind === CELL.error) return RESULT_CODE.error;
  if (kind === CELL.noCachedValue) return RESULT_CODE.noValue;
  return kind === CELL.number && value === 0 ? RESULT_CODE.blank : RESULT_CODE.unknown;
}
