import { flaggedByLuck, smallestDetectableRatio } from "../../../statistics/funnel";
import type { Table } from "../../../tables/table";
import { type Row, readTable, type TableReader } from "../read-table";
import { listed, pInWords, plural } from "../../../words/numbers";

/** Of the adjusted p, and of both tails of the ratio that would be seen. */
const NOTABLE = 0.05;
const FUNNEL = 0.95;
const POWER = 0.8;
/** Rows told one by one; the others stand on the sheet. */
const MOST_TOLD = 3;

const TESTED = [
  { dimension: "site", one: "site", many: "sites" },
  { dimension: "site and area", one: "pair of site and area", many: "pairs of site and area" },
] as const;

export function referralsSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const quarters = rowsOf(table, read, "quarter");
  const childMonths = read.sum(quarters, "childMonths");
  if (childMonths === 0) return ["Nobody was followed in the period, so that no referral counts"];
  const all = read.sum(quarters, "referrals");
  const rate = `${plural(all, "referral", "referrals")} in ${childMonths.toFixed(1)} child-months, ${((100 * all) / childMonths).toFixed(1)} per 100`;
  const groups = TESTED.map((each) => ({ ...each, rows: testedRows(table, read, each.dimension) })).filter(
    ({ rows }) => rows.length > 0,
  );
  if (groups.length === 0 || all === 0) return [rate];
  return [
    `${rate}; after Holm's adjustment ${listed(groups.map((group) => apartInWords(read, group)))} ${groups.length === 1 && countApart(read, groups[0]!.rows) === 1 ? "stands" : "stand"} apart from the program's own rates by age`,
    ...groups.flatMap(({ rows }) => apartRows(read, rows)),
    `Outside the 95% funnel: ${groups.map((group) => luckInWords(read, group)).join("; ")}.`,
    ...detectable(read, rowsOf(table, read, "site")),
  ];
}

interface Group {
  readonly one: string;
  readonly many: string;
  readonly rows: readonly Row[];
}

function rowsOf(table: Table, read: TableReader, dimension: string): Row[] {
  return table.rows.filter((row) => read.text(row, "dimension") === dimension);
}

function testedRows(table: Table, read: TableReader, dimension: string): Row[] {
  return rowsOf(table, read, dimension).filter((row) => (read.number(row, "expected") ?? 0) > 0);
}

function isApart(read: TableReader, row: Row): boolean {
  const holm = read.number(row, "holm");
  return holm !== null && holm <= NOTABLE;
}

function countApart(read: TableReader, rows: readonly Row[]): number {
  return rows.filter((row) => isApart(read, row)).length;
}

function apartInWords(read: TableReader, { one, many, rows }: Group): string {
  return `${countApart(read, rows) || "none"} of ${plural(rows.length, one, many)}`;
}

function apartRows(read: TableReader, rows: readonly Row[]): string[] {
  const apart = rows.filter((row) => isApart(read, row));
  if (apart.length === 0) return [];
  const told = apart.slice(0, MOST_TOLD).map((row) => {
    const decimals = (key: string) => (read.number(row, key) ?? 0).toFixed(2);
    const name = read.text(row, "value") || "site not recorded";
    return `${name}: ${plural(read.number(row, "referrals") ?? 0, "referral", "referrals")} where ${(read.number(row, "expected") ?? 0).toFixed(1)} were expected, ratio ${decimals("ratio")} (limits ${decimals("lower")} to ${decimals("upper")}), ${pInWords(read.number(row, "holm") ?? 1)}`;
  });
  const more = apart.length > MOST_TOLD ? `; and ${apart.length - MOST_TOLD} more on the sheet` : "";
  return [
    `${told.join("; ")}${more}. Which children are served, who refers and how referrals are written down can each make such a ratio: it is a question to ask, not an answer.`,
  ];
}

function luckInWords(read: TableReader, { one, many, rows }: Group): string {
  const outside = rows.filter((row) => {
    const ratio = read.number(row, "ratio") ?? 1;
    return ratio < (read.number(row, "funnel95Lower") ?? 0) || ratio > (read.number(row, "funnel95Upper") ?? Infinity);
  }).length;
  const luck = rows.reduce((sum, row) => sum + flaggedByLuck(read.number(row, "expected") as number, FUNNEL), 0);
  return `${outside} of ${plural(rows.length, one, many)}, where luck alone would put ${luck.toFixed(2)}`;
}

function detectable(read: TableReader, sites: readonly Row[]): string[] {
  const ratios = sites.flatMap((row) => {
    const expected = read.number(row, "expected") ?? 0;
    return expected > 0 ? [smallestDetectableRatio(expected, NOTABLE, POWER)] : [];
  });
  if (ratios.length === 0) return [];
  const [least, most] = [Math.min(...ratios).toFixed(1), Math.max(...ratios).toFixed(1)];
  return [
    `So few referrals show only a large excess: a site would have to lie at ${least === most ? least : `${least} to ${most}`} times its expected number to be seen in four of five such periods. A smaller excess can be there and not be seen.`,
  ];
}
