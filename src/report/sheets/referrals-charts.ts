import type { Table } from "../../tables/table";
import type { SeriesLook } from "../../workbook/series-looks";
import type { ChartOut, SeriesOut } from "../../workbook/sheets";
import type { NumbersBehind } from "./chart-grid";
import type { Drawable } from "./printed/printed-page";
import type { PicturePlace } from "../answer/picture";
import { funnelPoints } from "./funnel-points";
import { pointSeries, type SeriesPoint } from "./point-series";
import { type Row, readTable, type TableReader } from "./read-table";
import { plural } from "../../words/numbers";

/** Beyond this a limit is cut off: a few expected referrals would make every other line too short to read. */
const WIDEST_RATIO = 6;
/** More names than this would stand on top of each other. */
const MOST_NAMED = 24;

/** Observed over expected by site, with limits and as a funnel; none where no site has anything expected. */
export function referralsCharts(table: Table): Drawable[] {
  const read = readTable(table);
  const expecting = (dimension: string) =>
    table.rows
      .filter((row) => read.text(row, "dimension") === dimension && (read.number(row, "expected") ?? 0) > 0)
      .map((row) => pointOf(read, row));
  const sites = expecting("site").slice(0, MOST_NAMED);
  if (sites.length === 0) return [];
  return [
    (place, numbers) => limitsChart(sites, numbers, place),
    (place, numbers) => funnelChart(sites, expecting("site and area"), numbers, place),
  ];
}

export const REFERRALS_READING =
  "Ratio: referrals over those that the program's own rates by age give for the time in the program; 1 is as expected. Left: the diamond is the ratio, the line its likely range. Right: the same ratios by how many were expected, with lighter marks for a site and area; 95% of places lie between the inner lines and 99.8% between the outer ones by chance alone.";

interface Point {
  readonly name: string;
  readonly referrals: number;
  readonly expected: number;
  readonly ratio: number;
  readonly lower: number;
  readonly upper: number;
  /** Outside the 95% funnel. */
  readonly outside: boolean;
}

function pointOf(read: TableReader, row: Row): Point {
  const number = (key: string) => read.number(row, key) ?? 0;
  return {
    name: read.text(row, "value") || "site not recorded",
    referrals: number("referrals"),
    expected: number("expected"),
    ratio: number("ratio"),
    lower: number("lower"),
    upper: number("upper"),
    outside: number("ratio") < number("funnel95Lower") || number("ratio") > number("funnel95Upper"),
  };
}

function limitsChart(sites: readonly Point[], numbers: NumbersBehind, place: PicturePlace): ChartOut {
  const widest = Math.max(...sites.map(({ upper }) => upper));
  const max = Math.max(2, Math.min(Math.ceil(widest), WIDEST_RATIO));
  const cut = widest > max ? ` Limits above ${max} are cut off.` : "";
  const height = (index: number) => sites.length - index;
  return {
    kind: "curve",
    title: "Referrals over those expected, by site, with likely ranges",
    altText: `Observed over expected referrals, a line a site from limit to limit. ${sites.map(siteInWords).join(" ")}${cut}`,
    ...place,
    series: [
      drawn(
        "As expected",
        [
          [1, 0.4],
          [1, sites.length + 0.8],
        ],
        "edge",
        numbers,
      ),
      ...sites.map(({ name, lower, upper }, index) =>
        drawn(
          `${name}, limits`,
          [
            [lower, height(index)],
            [Math.min(upper, max), height(index)],
          ],
          "line",
          numbers,
        ),
      ),
      ...sites.map(({ name, ratio }, index) => named(name, [ratio, height(index)], numbers)),
    ],
    x: { title: "Observed over expected referrals", min: 0, max, step: max > 4 ? 1 : 0.5, format: "number" },
    y: { title: "", min: 0.4, max: sites.length + 0.8, hidden: true },
    legend: "none",
  };
}

function siteInWords({ name, referrals, expected, ratio, lower, upper }: Point): string {
  return `${name}: ${plural(referrals, "referral", "referrals")}, ${expected.toFixed(1)} expected, ratio ${ratio.toFixed(2)}, limits ${lower.toFixed(2)} to ${upper.toFixed(2)}.`;
}

function funnelChart(
  sites: readonly Point[],
  pairs: readonly Point[],
  numbers: NumbersBehind,
  place: PicturePlace,
): ChartOut {
  const all = [...sites, ...pairs];
  const max = Math.ceil(Math.max(...all.map(({ expected }) => expected)) * 1.1);
  const highest = Math.max(3, Math.ceil(Math.max(...all.map(({ ratio }) => ratio)) + 0.5));
  const limits = funnelPoints(max, highest);
  const pairSeries: SeriesOut[] =
    pairs.length === 0
      ? []
      : [
          drawn(
            "Site and area",
            pairs.map(({ expected, ratio }) => [expected, ratio]),
            "lightPoint",
            numbers,
          ),
        ];
  return {
    kind: "curve",
    title: `Funnel: ${all.filter((each) => each.outside).length} of ${plural(all.length, "place", "places")} outside the 95% lines`,
    altText: `Observed over expected referrals by the number expected, with funnel lines at 95% and 99.8%. ${sites.map((site) => funnelInWords(site)).join(" ")}`,
    ...place,
    series: [
      drawn(
        "As expected",
        [
          [0, 1],
          [max, 1],
        ],
        "edge",
        numbers,
      ),
      ...limits.map(({ name, points, look }) => ({ ...drawn(name, points, look, numbers), guide: true })),
      ...pairSeries,
      ...sites.map(({ name, expected, ratio }) => named(name, [expected, ratio], numbers)),
    ],
    x: { title: "Expected referrals", min: 0, max, step: max > 10 ? Math.ceil(max / 8) : 1, format: "number" },
    y: { title: "Observed over expected", min: 0, max: highest, step: 1, format: "number" },
    legend: "none",
  };
}

function funnelInWords({ name, referrals, expected, ratio }: Point): string {
  return `${name}: ratio ${ratio.toFixed(2)} (${referrals} of ${expected.toFixed(1)} expected).`;
}

function drawn(name: string, points: readonly SeriesPoint[], look: SeriesLook, numbers: NumbersBehind): SeriesOut {
  return pointSeries(name, points, look, numbers, ["x", "Ratio or row"]);
}

function named(name: string, point: readonly [number, number], numbers: NumbersBehind): SeriesOut {
  return { ...drawn(name, [point], "point", numbers), named: true };
}
