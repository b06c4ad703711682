import { capital, counted, plural } from "../../words/numbers";
import { monthInWords, monthsInWords } from "../../words/dates";
import { smallestDetectableRatio } from "../../statistics/funnel";
import type { Table } from "../../tables/table";
import type { Report } from "../report";
import { countAxis } from "../sheets/count-axis";
import { type Row, readTable, type TableReader } from "../sheets/read-table";
import { type ReportFinding, tableOf, withoutTable } from "./finding";
import type { BarPicture } from "./picture";

const ID = "clusters";
/** Above this a cluster is no more than chance gives. */
export const NOTABLE_P = 0.05;
const NOTABLE = 0.05;
const POWER = 0.8;
const EVERY = "all";

/**
 * The place and months where chance explains the referrals least, or that no place stands out.
 *
 * @param named - every month by its name, where there is room
 */
export function clusters(report: Report, named = false): ReportFinding {
  const scan = tableOf(report, "referral-scan");
  const read = scan && readTable(scan);
  const first = scan?.rows[0];
  if (scan && read && first && (read.number(first, "p") ?? 1) <= NOTABLE_P) {
    return {
      id: ID,
      headline: `${clusterInWords(read, first)}.`,
      below: [ASK_FIRST, [...severalOfOne(scan, read, first), ...(named ? [] : [MARKS])].join(" ")].filter(
        (line) => line !== "",
      ),
      picture: monthsPicture(report, read, first, named),
    };
  }
  const referrals = tableOf(report, "referrals");
  if (!referrals) return withoutTable(report, ID, "referrals", "Where referrals clustered");
  return {
    id: ID,
    headline: `No place had more referrals than its children's ages explain.`,
    below: quiet(referrals),
    picture: sitesPicture(referrals),
  };
}

const MARKS = "Filled: the months of the cluster. Dashes: the expected number.";

export const ASK_FIRST =
  "A new referrer, a screening day or a caught-up list does this as readily as a change in the children. Ask first.";

/** A cluster is less of a surprise where one child has several of its referrals. */
function severalOfOne({ notes }: Table, read: TableReader, row: Row): string[] {
  const key = ["place", "area", "firstMonth", "lastMonth"].map((each) => read.text(row, each));
  const about = `${key[0]}, ${key[1]}, ${key[2]} to ${key[3]}: `;
  return notes
    .filter((note) => note.startsWith(about))
    .map((note) => `${capital(note.slice(about.length).replace(/\. .*/, ""))}.`);
}

/** Where nothing clustered: each site's referrals beside those expected, with no month marked. */
function sitesPicture(referrals: Table): BarPicture | null {
  const read = readTable(referrals);
  const sites = referrals.rows
    .filter((row) => read.text(row, "dimension") === "site" && (read.number(row, "expected") ?? 0) > 0)
    .slice(0, MOST_SITES);
  if (sites.length === 0) return null;
  const bars = sites.map((row) => {
    const [made, expected] = [read.number(row, "referrals") ?? 0, read.number(row, "expected") ?? 0];
    const name = read.text(row, "value") || "Site not recorded";
    return { label: `${name}: ${counted(made)}, ${expected.toFixed(1)} expected`, values: [made] };
  });
  const most = Math.max(1, ...bars.flatMap(({ values }) => values));
  return {
    kind: "bar stacked",
    title: "Referrals by site, and how many were expected",
    altText: `Bars, one per site, of the referrals of the period. ${bars.map(({ label }) => label).join("; ")}.`,
    parts: [{ name: "Referrals", look: "solid" }],
    bars,
    x: { title: "", reversed: true },
    y: { ...countAxis("", most), hidden: true },
    legend: "none",
  };
}

const MOST_SITES = 8;

/** `River had 16 speech referrals in January to March 2026, where 2.3 were expected`. */
export function clusterInWords(read: TableReader, row: Row): string {
  const months = monthsInWords(read.text(row, "firstMonth"), read.text(row, "lastMonth"));
  const area = read.text(row, "area");
  const kind = area === EVERY ? "" : `${area} `;
  const observed = plural(read.number(row, "observed") ?? 0, `${kind}referral`, `${kind}referrals`);
  return `${placeOf(read, row)} had ${observed} in ${months}, where ${(read.number(row, "expected") ?? 0).toFixed(1)} were expected`;
}

export function placeOf(read: TableReader, row: Row): string {
  const place = read.text(row, "place");
  return place === EVERY ? "All sites together" : place || "Children without a site";
}

function quiet(referrals: Table): string[] {
  const read = readTable(referrals);
  const of = (dimension: string) => referrals.rows.filter((row) => read.text(row, "dimension") === dimension);
  const quarters = of("quarter");
  const made = plural(read.sum(quarters, "referrals"), "referral", "referrals");
  const months = read.sum(quarters, "childMonths").toFixed(0);
  return [`${made} in ${months} child-months. ${detectable(read, of("site"))}`.trim()];
}

/** What so few referrals could have shown at all. */
export function detectable(read: TableReader, sites: readonly Row[]): string {
  const ratios = sites.flatMap((row) => {
    const expected = read.number(row, "expected") ?? 0;
    return expected > 0 ? [smallestDetectableRatio(expected, NOTABLE, POWER)] : [];
  });
  if (ratios.length === 0) return "";
  return `With so few, only a site at ${Math.min(...ratios).toFixed(1)} times its expected number would have been noticed.`;
}

function monthsPicture({ print }: Report, read: TableReader, first: Row, named: boolean): BarPicture | null {
  const months = print.scannedMonths;
  if (months.length === 0) return null;
  const isWithin = (month: string) => month >= read.text(first, "firstMonth") && month <= read.text(first, "lastMonth");
  const span = `${monthInWords(months[0]!.month)} to ${monthInWords(months.at(-1)!.month)}`;
  const most = Math.max(...months.flatMap(({ observed, expected }) => [observed, expected]));
  return {
    kind: "column stacked",
    title: "Referrals by month, and how many were expected",
    altText: `${clusterInWords(read, first)}. Columns of referrals by month from ${span}, those of the cluster filled, with a line of the expected number.`,
    parts: [
      { name: "Cluster", look: "solid" },
      { name: "Other months", look: "hollow" },
      { name: "Expected", look: "dashed" },
    ],
    bars: months.map(({ month, observed, expected }) => ({
      label: shortMonth(month),
      values: [isWithin(month) ? observed : 0, isWithin(month) ? 0 : observed, expected],
    })),
    x: named ? { title: "" } : { title: `Months, ${span}`, labelEvery: 0 },
    y: countAxis("", most, 4),
    legend: named ? "bottom" : "none",
  };
}

/** `Jan 26`. */
export function shortMonth(month: string): string {
  return `${monthInWords(month).slice(0, 3)} ${month.slice(2, 4)}`;
}
