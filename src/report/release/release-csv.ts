import type { ReleasedTable, ReleasedValue } from "../../release/release-table";
import { printedValue } from "./printed";

/**
 * A released table as CSV (RFC 4180): commas, CRLF, a header row. In UTF-8 with a byte order mark, without which Excel
 * takes the file for the code page of its machine and spoils every accent. Numbers are unrounded, shares run from 0 to 1.
 *
 * A text that a spreadsheet would take for a formula gets an apostrophe before it, also behind a semicolon or a tab, at
 * which Excel splits fields in some languages. Source: OWASP, "CSV Injection".
 */
export function releaseCsv(table: ReleasedTable): string {
  const header = table.columns.map(({ key }) => textField(key));
  const rows = table.rows.map((row) => row.map(fieldOf));
  return BYTE_ORDER_MARK + [header, ...rows].map((fields) => `${fields.join(",")}\r\n`).join("");
}

const BYTE_ORDER_MARK = "\uFEFF";

function fieldOf(value: ReleasedValue): string {
  const printed = printedValue(value);
  if (printed === null) return "";
  return typeof printed === "string" ? textField(printed) : String(printed);
}

function textField(text: string): string {
  const safe = text.replace(/(?<=^|[;\t\r\n|])(?=[=+\-@\t\r])/g, "'");
  return /[",\r\n;\t|]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
