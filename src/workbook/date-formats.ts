/**
 * Whether the code of a number format shows a number as a date or a time of day. A format of elapsed time such as `[h]:mm` is
 * a length of time, not a date. Source: ECMA-376 Part 1, 18.8.31 "Number formats".
 */
export function isDateCode(code: string): boolean {
  const bare = code.replace(/"[^"]*"?|\\.|_.|\*./gs, "").replace(/general/gi, "");
  if (/\[(h+|m+|s+)\]/i.test(bare)) return false;
  return /[dmyhs]/i.test(bare.replace(/\[[^\]]*\]?/g, ""));
}

/**
 * The same for a format of a file, which may be a built-in one without a code. Source: ECMA-376 Part 1, 18.8.30 (14 to 22
 * and 45 to 47 everywhere; 27 to 36 and 50 to 58 in East Asian locales).
 */
export function isDateFormat(id: number, code: string | null): boolean {
  if (code !== null) return isDateCode(code);
  return DATE_RANGES.some(([first, last]) => id >= first && id <= last);
}

const DATE_RANGES = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
] as const;
