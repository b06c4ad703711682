import { SETTING_CATALOGUE, SETTING_NAMES, usualWritten } from "../../../settings/settings";
import { CAUTION } from "../../../words/cautions";
import { plural } from "../../../words/numbers";
import type { SheetOut } from "../../../workbook/sheets";
import { provenanceLine } from "../../again/provenance-line";
import type { Report } from "../../report";
import { valueInWords } from "../method-sheet";
import { periodInWords } from "../page";
import { sheetNameOf } from "../sheet-plan";
import { PrintedPage } from "./printed-page";
import { PORTRAIT } from "./widths";

export const ABOUT = "About this report";

/** The last page: where the data are, what was counted how, and all that is needed to make the report again. */
export function aboutPage(report: Report): SheetOut {
  const page = new PrintedPage(ABOUT, PORTRAIT, false);
  page.text(ABOUT, "title");
  page.text(`${periodInWords(report)}. Made with ${report.tool.name} ${report.provenance.version}.`, "subtitle");
  page.space(4);
  page.text("Where the data are", "section");
  page.text(WHERE, "note");
  page.text(
    `Its sheets: ${[...report.tables.map(({ id }) => sheetNameOf(id)), "Method", "Problems found"].join(", ")}.`,
    "note",
  );
  page.space(6);
  page.text("What was taken for granted, and how often", "section");
  for (const line of report.print.counted) if (page.roomLeft > KEPT_FOR_PROVENANCE) page.text(line, "small");
  page.space(6);
  page.text("Corrections you made", "section");
  for (const line of corrections(report)) if (page.roomLeft > KEPT_FOR_PROVENANCE) page.text(line, "small");
  page.space(6);
  page.text("To make this report again", "section");
  page.text(inWords(report), "note");
  page.text(provenanceLine(report), "small");
  page.space(4);
  page.text(CAUTION, "small");
  return page.finished(report);
}

const KEPT_FOR_PROVENANCE = 190;

const WHERE =
  "Every figure of this report, and the long tables behind it, are in the data workbook: the file with the same name and “-data” at its end, or the sheets that “Add the data too” adds in Excel. There each table has one sheet to sort and filter; “Method” has every definition, setting and source; “Problems found” lists each cell that needs correcting or checking, and what to do.";

function corrections({ print }: Report): readonly string[] {
  return print.decisions.length === 0 ? ["None."] : print.decisions;
}

function inWords(report: Report): string {
  const { version, fingerprint, seed, settings } = report.provenance;
  const changed = SETTING_NAMES.filter(
    (name) => JSON.stringify(settings[name]) !== JSON.stringify(usualWritten(name)),
  ).map((name) => `${SETTING_CATALOGUE[name].label} ${valueInWords(settings[name])}`);
  return `The same workbook, settings and version give the same report, to the byte. Version ${version}; ${plural(report.tables.length, "table", "tables")}; seed ${seed}; settings that are not the usual ones: ${changed.join("; ") || "none"}. Fingerprint of the records (SHA-256): ${fingerprint.match(/.{1,16}/g)?.join(" ") ?? ""}. The line below says the same for the command “windowline again”.`;
}
