/// <reference types="office-js" />
import type { PrintOut } from "../../../workbook/sheets";
import { rangeOf } from "./ranges";
import type { Step } from "./steps";

/** What Excel takes in a header or footer is 255 characters, codes and all. */
const LONGEST_TEXT = 200;

export function pageStep(print: PrintOut): Step {
  return (sheet) => {
    const { pageLayout: page } = sheet;
    page.orientation = print.landscape ? "Landscape" : "Portrait";
    page.paperSize = "Letter";
    page.zoom = { horizontalFitToPages: 1, ...(print.fit === "one page" && { verticalFitToPages: 1 }) };
    page.setPrintMargins("Inches", { left: 0.5, right: 0.5, top: 0.6, bottom: 0.7, header: 0.3, footer: 0.3 });
    if (print.repeatRows) page.setPrintTitleRows(`$${print.repeatRows.first + 1}:$${print.repeatRows.last + 1}`);
    if (print.area) page.setPrintArea(rangeOf(sheet, print.area));
    setTexts(page.headersFooters.defaultForAllPages, print);
  };
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
