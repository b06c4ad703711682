import { CELL, type Grid } from "../../workbook/cells";
import type { WordMeaning } from "../corrections/settled";
import { RESULT } from "../records";
import { RESULT_WORDS } from "../tables/observations";
import { isBlankText, wordKey } from "./words";

/** What stands in a column of results where a cell gives none of the four. */
export const RESULT_CODE = { blank: 10, unknown: 11, error: 12, noValue: 13, leftOut: 14 } as const;

const CODES = new Map<string, number>(
  (Object.keys(RESULT) as (keyof typeof RESULT)[]).flatMap((result) =>
    RESULT_WORDS[result].map((word) => [wordKey(word), RESULT[result]] as const),
  ),
);

const SETTLED: Readonly<Record<WordMeaning, number>> = {
  met: RESULT.met,
  emerging: RESULT.emerging,
  "not met": RESULT.notMet,
  lost: RESULT.lost,
  "leave out": RESULT_CODE.leftOut,
};

/** The result of a text, or null where it is none of the four. */
export function resultOf(text: string): number | null {
  return CODES.get(wordKey(text)) ?? null;
}

/** What the words for results stand for in one workbook: those that everyone knows, and those that were settled. */
export class ResultWords {
  /**
   * @param settled - by `wordKey`; undefined where nothing is settled, null where a person has not chosen yet
   */
  constructor(private readonly settled: (key: string) => WordMeaning | null | undefined = () => undefined) {}

  codeOfText(text: string): number {
    if (isBlankText(text)) return RESULT_CODE.blank;
    const means = this.settled(wordKey(text));
    if (means) return SETTLED[means];
    return means === null ? RESULT_CODE.unknown : (resultOf(text) ?? RESULT_CODE.unknown);
  }

  /** A number is a word only where a person settled it; 0 is a blank otherwise, as some hosts hand blanks over. */
  codeOfNumber(value: number): number {
    const means = this.settled(wordKey(String(value)));
    if (means) return SETTLED[means];
    return value === 0 ? RESULT_CODE.blank : RESULT_CODE.unknown;
  }

  codeOfKind(kind: number, value: number): number {
    if (kind === CELL.error) return RESULT_CODE.error;
    if (kind === CELL.noCachedValue) return RESULT_CODE.noValue;
    if (kind === CELL.boolean) return this.codeOfText(value === 1 ? "TRUE" : "FALSE");
    return kind === CELL.number ? this.codeOfNumber(value) : RESULT_CODE.unknown;
  }

  /** The result that a blank cell stands for; null where it says nothing, as usual. */
  ofBlank(): number | null {
    const means = this.settled("");
    return means && means !== "leave out" ? SETTLED[means] : null;
  }
}

/** Reads a column of results, each distinct text looked up once. */
export function readResultColumn(grid: Grid, column: number, rows: Int32Array, words: ResultWords): Uint8Array {
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
      if (code === 255) code = byText[value] = words.codeOfText(grid.strings[value] as string);
      results[i] = code;
    } else results[i] = words.codeOfKind(kind, value);
  }
  return results;
}
