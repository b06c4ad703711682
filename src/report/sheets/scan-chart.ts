import type { Table } from "../../tables/table";
import type { SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { type Bar, barSeries } from "./bar-series";
import { countAxis } from "./count-axis";
import { ChartPage, type ChartPlace } from "./chart-page";
import { readTable } from "./read-table";
import { placeAndArea, windowInWords } from "./sentences/referral-scan";
import { monthInWords } from "../../words/dates";
import { capital, plural } from "../../words/numbers";

const CHART_PIXELS = 580;

/** The most likely place month by month, its window told apart; null where the scan lists no window. */
export function scanChart(table: Table, report: Report): SheetOut | null {
  const [first] = table.rows;
  const months = report.print.scannedMonths;
  if (!first || months.length === 0) return null;
  const read = readTable(table);
  const inWindow = (month: string) => month >= read.text(first, "firstMonth") && month <= read.text(first, "lastMonth");
  const bars = months.map(({ month, observed, expected }): Bar => ({
    label: month,
    values: [inWindow(month) ? observed : 0, inWindow(month) ? 0 : observed, expected],
  }));
  const page = new ChartPage(table, report, READING, [{ width: 16 }, ...PARTS.map(() => ({ width: 14 }))]);
  const [place] = page.places(1, 1, CHART_PIXELS) as [ChartPlace];
  const where = capital(placeAndArea(read, first));
  const within = months.filter(({ month }) => inWindow(month));
  const outside = months.filter(({ month }) => !inWindow(month));
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const rest = `In the other ${plural(outside.length, "month", "months")}: ${sum(outside.map(({ observed }) => observed))} where ${sum(outside.map(({ expected }) => expected)).toFixed(1)} were expected.`;
  return page.finished([
    {
      kind: "column stacked",
      title: `${where}: ${plural(sum(within.map(({ observed }) => observed)), "referral", "referrals")} in the filled months, where ${sum(within.map(({ expected }) => expected)).toFixed(1)} were expected`,
      altText: `${windowInWords(read, first)}. ${rest} Columns of referrals from ${monthInWords(months[0]!.month)} to ${monthInWords(months.at(-1)!.month)}, those of the most likely window filled, the others hollow, and a line of expected referrals.`,
      ...place,
      series: barSeries(PARTS, bars, page.numbers),
      x: { title: "Month" },
      y: countAxis("Referrals", Math.max(...months.flatMap(({ observed, expected }) => [observed, expected]))),
      legend: "bottom",
    },
  ]);
}

const PARTS = [
  { name: "In the most likely window", look: "solid" },
  { name: "In the other months", look: "hollow" },
  { name: "Expected at the program's rates by age", look: "dashed" },
] as const;

const READING =
  "The window is where chance is least able to explain the number of referrals; its edges are a best guess. Low months beside a high one are no sign of anything.";
