import { safeSheetNames } from "../../workbook/sheet-names";
import type { SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { ABOUT, aboutPage } from "./printed/about-page";
import { answerPage } from "./printed/answer-page";
import { areaPages } from "./printed/area-page";
import { clustersPage } from "./printed/clusters-page";
import { ratingsPage } from "./printed/ratings-page";
import { readingPage } from "./printed/reading-page";
import { referralsPage } from "./printed/referrals-page";
import { stepsPage } from "./printed/steps-page";
import { trendPage } from "./printed/trend-page";

/** The report as it is printed, one sheet per page: the answer, how to read it, areas, services, trend, what it is made of. */
export function reportSheets(report: Report): SheetOut[] {
  const body = [
    ...areaPages(report),
    ...referralsPage(report),
    ...clustersPage(report),
    ...stepsPage(report),
    ...ratingsPage(report),
    ...trendPage(report),
  ];
  const contents = [
    "In brief: five findings, and what needs a person",
    "The last eight quarters, and how to read this report",
    ...body.map(({ about }) => about),
    ABOUT,
  ].map((what, at) => ({
    page: at + 1,
    what,
  }));
  return named([
    answerPage(report),
    readingPage(report, contents),
    ...body.map(({ sheet }) => sheet),
    aboutPage(report),
  ]);
}

/** Names as a workbook takes them. */
export function named(sheets: readonly SheetOut[]): SheetOut[] {
  const names = safeSheetNames(sheets.map(({ name }) => name));
  return sheets.map((sheet, index) => ({ ...sheet, name: names[index] as string }));
}
