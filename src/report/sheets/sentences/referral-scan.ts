import type { Table } from "../../../tables/table";
import { type Row, readTable, type TableReader } from "../read-table";
import { monthsInWords } from "../../../words/dates";
import { pInWords, plural } from "../../../words/numbers";

/** Above this a cluster is no more than chance gives. */
export const NOTABLE_P = 0.05;
const EVERY = "all";

export function referralScanSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const first = table.rows[0] as Row;
  const notable = table.rows.filter((row) => (read.number(row, "p") as number) <= NOTABLE_P).length;
  const found = windowInWords(read, first);
  if (notable === 0) return [`No cluster of referrals beyond what chance gives; the nearest to one is ${found}`];
  const rest = `${notable} of the ${plural(table.rows.length, "window", "windows")} listed ${notable === 1 ? "has" : "have"} a p of 0.05 or less.`;
  return [`The most likely cluster of referrals is ${found}`, `${rest} ${QUESTION}`];
}

const QUESTION =
  "A new referrer, a screening day or a list caught up with makes such months as surely as a change in the children: it is a question to ask, not an answer.";

/** `River, speech, January to March 2026, with 16 referrals where 2.3 were expected (p 0.001 for all windows together)`. */
export function windowInWords(read: TableReader, row: Row): string {
  const months = monthsInWords(read.text(row, "firstMonth"), read.text(row, "lastMonth"));
  const observed = plural(read.number(row, "observed") ?? 0, "referral", "referrals");
  const expected = (read.number(row, "expected") ?? 0).toFixed(1);
  return `${placeAndArea(read, row)}, ${months}, with ${observed} where ${expected} were expected (${pInWords(read.number(row, "p") ?? 1)} for all windows together)`;
}

export function placeAndArea(read: TableReader, row: Row): string {
  const place = read.text(row, "place");
  const area = read.text(row, "area");
  const where = place === EVERY ? "all sites" : place || "site not recorded";
  return `${where}, ${area === EVERY ? "every area" : area}`;
}
