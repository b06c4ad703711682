import type { Worksheet } from "wasm-xlsxwriter/web";
import { MARGINS } from "../../../workbook/paper";
import type { PrintOut } from "../../../workbook/sheets";

const LETTER_PAPER = 1;
/** What Excel takes in a header or footer, codes and all. */
const LONGEST_FOOTER_TEXT = 200;

export function setPage(target: Worksheet, print: PrintOut): void {
  target.setPaperSize(LETTER_PAPER);
  if (print.landscape) target.setLandscape();
  else target.setPortrait();
  const { left, right, top, bottom, header, footer } = MARGINS;
  target.setMargins(left, right, top, bottom, header, footer);
  target.setPrintFitToPages(1, print.fit === "one page" ? 1 : 0);
  if (print.repeatRows) target.setRepeatRows(print.repeatRows.first, print.repeatRows.last);
  if (print.area) target.setPrintArea(print.area.top, print.area.left, print.area.bottom, print.area.right);
  if (print.header) target.setHeader(`&L${plain(print.header)}`);
  target.setFooter(`&L${plain(print.footer)}&C&A&RPage &P of &N`);
}

/** "&" starts a code in a header or footer; twice it is itself. */
function plain(text: string): string {
  return text.slice(0, LONGEST_FOOTER_TEXT).replaceAll("&", "&&");
}
