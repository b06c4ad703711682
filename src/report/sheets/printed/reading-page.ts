import { CAUTION, HOW_TO_READ } from "../../../words/cautions";
import { counted, plural } from "../../../words/numbers";
import type { SheetOut } from "../../../workbook/sheets";
import { areaTrends } from "../../answer/area-trends";
import type { Report } from "../../report";
import { sentencesOf } from "../sentences/sentences";
import { PrintedPage } from "./printed-page";
import { PORTRAIT } from "./widths";

const READING = "How to read";

export interface ContentsLine {
  readonly page: number;
  readonly what: string;
}

/** Page 2: the trend, how to read the figures, what was left out, where to find what. */
export function readingPage(report: Report, contents: readonly ContentsLine[]): SheetOut {
  const page = new PrintedPage(READING, PORTRAIT, false);
  page.text("The last eight quarters, and how to read this report", "title");
  trend(page, report);
  page.text("How to read these figures", "section");
  for (const line of HOW_TO_READ) page.text(`•  ${line}`, "small");
  page.space(6);
  page.text("Rows used and left out", "section");
  page.text(rowsUsed(report).join(" "), "small");
  page.space(6);
  page.text("Where to find what", "section");
  const spans = [
    { from: 0, to: 9 },
    { from: 10, to: 11 },
  ];
  for (const { page: number, what } of contents)
    page.spannedRow(
      [
        { value: what, style: "cell" },
        { value: `page ${number}`, style: "cellRight" },
      ],
      spans,
    );
  page.space(4);
  page.text(CAUTION, "small");
  return page.finished(report);
}

const TREND_POINTS = 100;

function trend(page: PrintedPage, report: Report): void {
  const table = report.tables.find(({ id }) => id === "trend");
  const areas = areaTrends(report);
  if (!table || areas.length === 0) return;
  page.text(`${sentencesOf(table, report)[0] ?? ""}`, "headline");
  page.text(LINES, "small");
  for (let at = 0; at < areas.length; at += 3)
    page.chartRow(
      areas.slice(at, at + 3).map(({ picture }) => picture),
      TREND_POINTS,
    );
  page.space(4);
}

const LINES =
  "Each mark: of the up-to-date skill checks at the end of a quarter, the share met. A line breaks where correcting for an early birth stopped for some children, since their age jumps there. A lighter mark is provisional.";

function rowsUsed({ input }: Report): string[] {
  return input.map(({ table, rows, used, leftOut }) => {
    const reasons = Object.entries(leftOut).map(([reason, count]) => `${reason} (${counted(count)})`);
    const out = reasons.length === 0 ? "none left out" : `left out: ${reasons.join(", ")}`;
    return `${table}: ${counted(used)} of ${plural(rows, "row", "rows")} used; ${out}.`;
  });
}
