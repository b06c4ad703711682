import { addDays } from "../../oracle/calendar";
import { type Printed, type PrintedRow, type Reading, rowsOf, take, takeFigure } from "./outsider";

type Period = readonly [from: string, to: string];

/** What each row of referrals prints that gives back all referrals of the period, or all of an area. */
const OF_ALL = [
  "expected",
  "ratio",
  "lower",
  "upper",
  "p",
  "funnel95Lower",
  "funnel95Upper",
  "funnel998Lower",
  "funnel998Upper",
];
const OF_OWN = ["per100ChildMonths", "ratio", "lower", "upper", "p", "funnel95Lower", "funnel95Upper"];

/** Reads referrals: rows of every cut of one period, and periods in longer ones. */
export function readReferrals(reading: Reading, printed: Printed): void {
  const table = printed.tables.find(({ id }) => id === "referrals");
  if (table === undefined) return;
  const rows = rowsOf(table);
  const period: Period = [printed.from, printed.asOf];
  rows.forEach((row) => readRow(reading, printed, row));
  const of = (dimension: string) => rows.filter((row) => row["dimension"] === dimension);
  const sum = (whole: string, parts: readonly PrintedRow[], again: boolean) =>
    sumOf(reading, printed, whole, parts, again);
  const all = nameOf(period, "", "referrals");
  for (const dimension of ["site", "band", "source"]) sum(all, of(dimension), false);
  sum(all, of("quarter"), false);
  sum(all, of("area"), true);
  for (const site of of("site")) {
    const own = of("site and area").filter((row) => String(row["value"]).startsWith(`${String(site["value"])} / `));
    sum(referralsOf(printed, site), own, true);
  }
  for (const area of of("area")) {
    const own = of("site and area").filter((row) => String(row["value"]).endsWith(` / ${String(area["value"])}`));
    sum(referralsOf(printed, area), own, false);
  }
  reading.onSecret(all);
  overPeriods(reading, printed, rows);
}

function nameOf([from, to]: Period, row: string, column: string): string {
  return ["referred", `${from} to ${to}`, row, column].join("|");
}

function rowName(printed: Printed, row: PrintedRow): { readonly period: Period; readonly row: string } {
  const { dimension, value } = row;
  if (dimension === "quarter") return { period: quarterOf(String(value), printed), row: "" };
  return { period: [printed.from, printed.asOf], row: `${String(dimension)} ${String(value)}` };
}

function referralsOf(printed: Printed, row: PrintedRow): string {
  const { period, row: own } = rowName(printed, row);
  return nameOf(period, own, "referrals");
}

function readRow(reading: Reading, printed: Printed, row: PrintedRow): void {
  const { period, row: own } = rowName(printed, row);
  const isOfChildren = row["dimension"] === "area" || row["dimension"] === "source";
  const children = nameOf(period, isOfChildren ? "" : own.replace(/^site and area (.*) \/ .*$/, "site $1"), "children");
  const [referrals, referred] = [nameOf(period, own, "referrals"), nameOf(period, own, "childrenReferred")];
  // a site or a band that nobody was followed in has no row
  if (row["dimension"] === "site" || row["dimension"] === "band") reading.counts.know(children, 1, Infinity);
  take(reading, children, row["children"] ?? null);
  take(reading, referrals, row["referrals"] ?? null);
  take(reading, referred, row["childrenReferred"] ?? null);
  reading.counts.within(referred, referrals, `${referrals}, further`);
  reading.counts.within(referred, children, `${children} not referred, ${own}`);
  reading.onSecret(`${children} not referred, ${own}`);
  const area = /^site and area .* \/ (.*)$/.exec(own)?.[1];
  const all = nameOf([printed.from, printed.asOf], area === undefined ? "" : `area ${area}`, "referrals");
  OF_ALL.forEach((column) => takeFigure(reading, row[column] ?? null, [all]));
  OF_OWN.forEach((column) => takeFigure(reading, row[column] ?? null, [referrals]));
}

function sumOf(reading: Reading, printed: Printed, whole: string, rows: readonly PrintedRow[], again: boolean): void {
  if (rows.length === 0) return;
  const names = rows.map((row) => referralsOf(printed, row));
  const terms = [whole, ...(again ? [`${whole}, counted again`] : [])].map((name) => [name, 1] as const);
  reading.counts.tie([...terms, ...names.map((name) => [name, -1] as const)]);
}

/** Numbers of referrals add up over time: every period is the sum of the stretches that all periods cut it into. */
function overPeriods(reading: Reading, printed: Printed, rows: readonly PrintedRow[]): void {
  const others = reading.all.filter(({ tables }) => tables.some(({ id }) => id === "referrals"));
  const periods = others.flatMap((each) => [
    [each.from, each.asOf] as Period,
    ...quarters(each).map((label) => quarterOf(label, each)),
  ]);
  const edges = [...new Set(periods.flatMap(([from, to]) => [from, addDays(to, 1)]))].sort();
  const cut = ([from, to]: Period) =>
    edges.slice(1).flatMap((edge, at): Period[] => {
      const piece: Period = [edges[at]!, addDays(edge, -1)];
      return piece[0] >= from && piece[1] <= to ? [piece] : [];
    });
  for (const row of rows) {
    const { period, row: own } = rowName(printed, row);
    if (own.startsWith("band ") && others.some((each) => each.edges.join() !== printed.edges.join())) continue;
    const pieces = cut(period).map((piece) => nameOf(piece, own, "referrals"));
    reading.counts.adds(nameOf(period, own, "referrals"), pieces);
    pieces.forEach((piece) => reading.onSecret(piece));
  }
  const period: Period = [printed.from, printed.asOf];
  reading.counts.adds(
    nameOf(period, "", "referrals"),
    cut(period).map((piece) => nameOf(piece, "", "referrals")),
  );
  absentRows(reading, printed, others, rows);
}

/** A site, a source or an area that has a row elsewhere and none here had no referral here. */
function absentRows(reading: Reading, printed: Printed, others: readonly Printed[], rows: readonly PrintedRow[]): void {
  const here = new Set(rows.map((row) => `${String(row["dimension"])} ${String(row["value"])}`));
  for (const other of others) {
    for (const { dimension, value } of rowsOf(other.tables.find(({ id }) => id === "referrals")!)) {
      const name = `${String(dimension)} ${String(value)}`;
      if (dimension === "quarter" || here.has(name)) continue;
      if (!rows.some((row) => row["dimension"] === dimension)) continue;
      const period: Period = [printed.from, printed.asOf];
      const referred = nameOf(period, name, "childrenReferred");
      reading.counts.know(nameOf(period, name, "referrals"), 0);
      reading.counts.know(referred, 0);
      if (dimension !== "source" && dimension !== "area") continue;
      const children = nameOf(period, "", "children");
      reading.counts.within(referred, children, `${children} not referred, ${name}`);
    }
  }
}

/** `2026 Q1` of the periods printed on a release. */
function quarterOf(label: string, { from, asOf }: Pick<Printed, "from" | "asOf">): Period {
  const [, year, quarter] = /(\d{4}).*Q?(\d)/.exec(label) ?? [];
  if (year === undefined || quarter === undefined) throw new Error(`${label} is no quarter`);
  const start = `${year}-${String(Number(quarter) * 3 - 2).padStart(2, "0")}-01`;
  const next =
    quarter === "4" ? `${Number(year) + 1}-01-01` : `${year}-${String(Number(quarter) * 3 + 1).padStart(2, "0")}-01`;
  const end = addDays(next, -1);
  return [start > from ? start : from, end < asOf ? end : asOf];
}

function quarters(printed: Printed): string[] {
  const table = printed.tables.find(({ id }) => id === "referrals")!;
  return rowsOf(table).flatMap(({ dimension, value }) => (dimension === "quarter" ? [String(value)] : []));
}
