import { flaggedByLuck } from "../../../statistics/funnel";
import type { Table } from "../../../tables/table";
import { counted, listed, pInWords, plural } from "../../../words/numbers";
import { detectable } from "../../answer/clusters";
import { type Row, readTable, type TableReader } from "../read-table";

/** Of the adjusted p-value. */
const NOTABLE = 0.05;
const FUNNEL = 0.95;
/** Rows named one by one; the others are in the table. */
const MOST_NAMED = 3;

const TESTED = [
  { dimension: "site", one: "site", many: "sites" },
  { dimension: "site and area", one: "pair of site and area", many: "pairs of site and area" },
] as const;

export function referralsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const quarters = rowsOf(table, read, "quarter");
  const childMonths = read.sum(quarters, "childMonths");
  if (childMonths === 0) return ["No child was in the program in the period, so no referral counts"];
  const all = read.sum(quarters, "referrals");
  const rate = `${plural(all, "referral", "referrals")} in ${counted(Math.round(childMonths))} child-months, ${((100 * all) / childMonths).toFixed(1)} per 100`;
  const groups = TESTED.map((each) => ({ ...each, rows: testedRows(table, read, each.dimension) })).filter(
    ({ rows }) => rows.length > 0,
  );
  if (groups.length === 0 || all === 0) return [rate];
  const apart = groups.flatMap(({ rows }) => rows.filter((row) => isApart(read, row)));
  return [
    titleOf(read, apart),
    `${rate}.`,
    ...apartRows(read, apart),
    `Outside the 95% funnel lines: ${listed(groups.map((group) => luckInWords(read, group)))}.`,
    ...[detectable(read, rowsOf(table, read, "site"))].filter((line) => line !== ""),
  ];
}

function titleOf(read: TableReader, [first, ...others]: readonly Row[]): string {
  if (!first) return "No site had more or fewer referrals than its children's ages explain";
  const more = others.length === 0 ? "" : `, and ${plural(others.length, "more place", "more places")} stood apart`;
  return `${nameOf(read, first)} had ${plural(read.number(first, "referrals") ?? 0, "referral", "referrals")}, where ${(read.number(first, "expected") ?? 0).toFixed(1)} were expected for its children's ages${more}`;
}

interface Group {
  readonly one: string;
  readonly many: string;
  readonly rows: readonly Row[];
}

function nameOf(read: TableReader, row: Row): string {
  return read.text(row, "value") || "The site not recorded";
}

function rowsOf(table: Table, read: TableReader, dimension: string): Row[] {
  return table.rows.filter((row) => read.text(row, "dimension") === dimension);
}

function testedRows(table: Table, read: TableReader, dimension: string): Row[] {
  return rowsOf(table, read, dimension).filter((row) => (read.number(row, "expected") ?? 0) > 0);
}

/** After Holm's adjustment for the number of rows of its kind. */
function isApart(read: TableReader, row: Row): boolean {
  const holm = read.number(row, "holm");
  return holm !== null && holm <= NOTABLE;
}

function apartRows(read: TableReader, apart: readonly Row[]): string[] {
  if (apart.length === 0) return [];
  const named = apart.slice(0, MOST_NAMED).map((row) => {
    const decimals = (key: string) => (read.number(row, key) ?? 0).toFixed(2);
    return `${nameOf(read, row)} had ${decimals("ratio")} times its expected number (likely range ${decimals("lower")} to ${decimals("upper")}; ${pInWords(read.number(row, "holm") ?? 1)}, adjusted by Holm's method)`;
  });
  const more = apart.length > MOST_NAMED ? `; ${apart.length - MOST_NAMED} more are in the table` : "";
  return [
    `${named.join("; ")}${more}. Which children a site serves, who refers, and how referrals are recorded can each do this. Ask first.`,
  ];
}

function luckInWords(read: TableReader, { one, many, rows }: Group): string {
  const outside = rows.filter((row) => {
    const ratio = read.number(row, "ratio") ?? 1;
    return ratio < (read.number(row, "funnel95Lower") ?? 0) || ratio > (read.number(row, "funnel95Upper") ?? Infinity);
  }).length;
  const luck = rows.reduce((sum, row) => sum + flaggedByLuck(read.number(row, "expected") as number, FUNNEL), 0);
  return `${outside} of ${plural(rows.length, one, many)} (luck alone would put ${luck.toFixed(2)} there)`;
}
