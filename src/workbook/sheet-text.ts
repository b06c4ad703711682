import { LONGEST_CELL_TEXT } from "./sheets";

const CUT_NOTE = " [cut: too long for a cell]";
/** What XML 1.0 cannot hold (production 2, "Char"), but for a tab and a line feed; half a surrogate pair too. */
const NOT_IN_XML =
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** The text as a cell can hold it: what XML has no place for becomes U+FFFD, and what is too long is cut and says so. */
export function cellText(text: string): string {
  const clean = text.replace(NOT_IN_XML, "\uFFFD");
  if (clean.length <= LONGEST_CELL_TEXT) return clean;
  const kept = clean.slice(0, LONGEST_CELL_TEXT - CUT_NOTE.length).replace(/[\uD800-\uDBFF]$/, "");
  return kept + CUT_NOTE;
}

/**
 * True for text that a spreadsheet would take for a formula if it were typed in or read from a CSV file.
 * Source: OWASP, "CSV Injection".
 */
export function looksLikeFormula(text: string): boolean {
  return /^[=+\-@\t\r]/.test(text);
}
