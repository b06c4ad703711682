/// <reference types="office-js" />
import { MARGINS } from "../../../workbook/paper";
import type { PrintOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import type { Trimming } from "./trimmings";

/** What Excel takes in a header or footer is 255 characters, codes and all. */
const LONGEST_TEXT = 200;

/** Where no printer is set up Excel may refuse some of them: the sheet is whole without any. */
export function pageTrimmings(print: PrintOut): Trimming[] {
  const { repeatRows, area } = print;
  const layout = (what: string, set: (page: Excel.PageLayout, sheet: Excel.Worksheet) => void): Trimming => ({
    what,
    step: (sheet) => set(sheet.pageLayout, sheet),
  });
  const pages = { horizontalFitToPages: 1, ...(print.fit === "one page" && { verticalFitToPages: 1 }) };
  return [
    layout("orientation", (page) => (page.orientation = print.landscape ? "Landscape" : "Portrait")),
    layout("paper size", (page) => (page.paperSize = "Letter")),
    layout("zoom", (page) => (page.zoom = pages)),
    layout("margins", (page) => page.setPrintMargins("Inches", MARGINS)),
    ...(repeatRows
      ? [layout("rows to repeat", (page) => page.setPrintTitleRows(`$${repeatRows.first + 1}:$${repeatRows.last + 1}`))]
      : []),
    ...(area ? [layout("print area", (page, sheet) => page.setPrintArea(rangeOf(sheet, area)))] : []),
    layout("header and footer", (page) => setTexts(page.headersFooters.defaultForAllPages, print)),
  ];
}

function setTexts(texts: Excel.HeaderFooter, { header, footer }: PrintOut): void {
  if (header) texts.leftHeader = plain(header);
  texts.leftFooter = plain(footer);
  texts.centerFooter = "&A";
  texts.rightFooter = "Page &P of &N";
}

/** "&" starts a code in a header or footer; twice it is itself, and never cut in two. */
function plain(text: string): string {
  return text
    .replaceAll("&", "&&")
    .slice(0, LONGEST_TEXT)
    .replace(/(?<!&)((?:&&)*)&$/, "$1");
}
