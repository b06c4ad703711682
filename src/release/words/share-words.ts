import { LEAST_BASE_OF_A_PERCENT } from "../../words/numbers";
import type { ReleasedReader, ReleasedRow } from "./read-released";

/** Columns of one share: its numerator, its denominator, itself and its limits. */
export interface ShareKeys {
  readonly count: string;
  readonly of: string;
  /** 0 to 1, or 0 to 100 where `percent`. */
  readonly share: string;
  readonly lower?: string;
  readonly upper?: string;
  readonly percent?: boolean;
}

export interface ShareWords {
  readonly count: string;
  readonly of: string;
  /** ` (62.4%; 95% confidence interval 51.7% to 72.0%)`; "" where the share is not shown, or is one of fewer than 20. */
  readonly percent: string;
}

/** A share in words: null unless both its numbers are shown, since a percent never stands without them; of nobody there is none. */
export function shareWords(read: ReleasedReader, row: ReleasedRow, keys: ShareKeys, level: number): ShareWords | null {
  const [count, of] = [read.count(row, keys.count), read.count(row, keys.of)];
  if (count === null || of === null || read.at(row, keys.of) === 0) return null;
  const share = read.number(row, keys.share);
  if (share === null || isFew(read, row, keys.of)) return { count, of, percent: "" };
  const times = keys.percent ? 1 : 100;
  const limits = limitsOf(read, row, keys, level, times);
  return { count, of, percent: ` (${percentText(share * times)}${limits})` };
}

/** From a smaller base no sentence and no bar gives a percent (METHOD.md, section 9). */
export function isFew(read: ReleasedReader, row: ReleasedRow, of: string): boolean {
  const base = read.number(row, of);
  return base !== null && base < LEAST_BASE_OF_A_PERCENT;
}

/** `62.4%`. */
export function percentText(percent: number): string {
  return `${percent.toFixed(1)}%`;
}

/** `95%`, and `99.5%`. */
export function levelText(level: number): string {
  return `${Number((level * 100).toFixed(3))}%`;
}

function limitsOf(
  read: ReleasedReader,
  row: ReleasedRow,
  { lower, upper }: ShareKeys,
  level: number,
  times: number,
): string {
  const [low, high] = [lower, upper].map((key) => (key === undefined ? null : read.number(row, key)));
  if (typeof low !== "number" || typeof high !== "number") return "";
  return `; ${levelText(level)} confidence interval ${percentText(low * times)} to ${percentText(high * times)}`;
}
