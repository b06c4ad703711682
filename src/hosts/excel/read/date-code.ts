/**
 * Whether a number format shows a number as a date or a time of day. A format of elapsed time such as `[h]:mm` is a length
 * of time, not a date. Source: ECMA-376 Part 1, 18.8.31 "Number formats".
 */
export function isDateCode(code: string): boolean {
  const bare = code.replace(/"[^"]*"?|\\.|_.|\*./gs, "").replace(/general/gi, "");
  if (/\[(h+|m+|s+)\]/i.test(bare)) return false;
  return /[dmyhs]/i.test(bare.replace(/\[[^\]]*\]?/g, ""));
}
