import type { SheetOut } from "../../../workbook/sheets";
import type { FindingId, ReportFinding } from "../../answer/finding";
import { fiveFindings } from "../../answer/five-findings";
import { needsAPerson } from "../../answer/needs-a-person";
import type { Report } from "../../report";
import { periodInWords } from "../page";
import { CAUTION } from "../../../words/cautions";
import { PrintedPage } from "./printed-page";
import { PORTRAIT } from "./widths";
import { plural } from "../../../words/numbers";

const ANSWER = "In brief";
const TEXT = { from: 0, to: 4 };
const CHART = { from: 5, to: 11 };

/** Points of each finding; more for one with more bars. */
const HEIGHTS: Readonly<Record<FindingId, number>> = {
  "expected-by-now": 128,
  "reached-by-age": 112,
  "referral-to-plan": 86,
  clusters: 104,
  "outcome-levels": 96,
};

/** Page 1: five findings, each a sentence and a small chart, and what a person has to settle. */
export function answerPage(report: Report): SheetOut {
  const page = new PrintedPage(ANSWER, PORTRAIT, false);
  page.text("What the records say", "title");
  page.text(
    `${periodInWords(report)}. ${plural(report.print.followed, "child", "children")} in the program on the last day.`,
    "subtitle",
  );
  page.space(4);
  for (const finding of fiveFindings(report)) add(page, finding);
  page.text("Needs a person", "boxTitle");
  for (const line of needsAPerson(report)) page.text(`•  ${line}`, "box");
  page.space(4);
  page.text(CAUTION, "small");
  return page.finished(report);
}

function add(page: PrintedPage, { id, headline, below, picture }: ReportFinding): void {
  const lines = [
    { text: headline, style: "headline" as const },
    ...below.filter((line) => line !== "").map((text) => ({ text, style: "small" as const })),
  ];
  page.beside(lines, TEXT, picture, CHART, picture ? HEIGHTS[id] : 0);
  page.space(6);
}
