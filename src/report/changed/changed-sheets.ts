import { dayFromIso } from "../../age/day";
import type { SheetOut } from "../../workbook/sheets";
import { CAUTION } from "../../words/cautions";
import { dayInWords } from "../../words/dates";
import type { Report } from "../report";
import { dataSheets } from "../sheets/data-sheets";
import { PrintedPage } from "../sheets/printed/printed-page";
import { LANDSCAPE } from "../sheets/printed/widths";
import { named } from "../sheets/report-sheets";
import { bridgePicture } from "./bridge-picture";
import { type Bridge, bridgeInWords } from "./bridges";

/** The children, all skill checks, those met; what follows are the areas. */
const HEADLINES = 3;
const ROOM_POINTS = 130;

/** What changed between two runs as sheets: the headline figures drawn, the tables, how they were made, problems found. */
export function changedSheets(report: Report): SheetOut[] {
  const { bridges } = report.print;
  const pages = [bridges.slice(0, HEADLINES), bridges.slice(HEADLINES)].filter((each) => each.length > 0);
  return named([...pages.map((each, at) => bridgesPage(each, at, report)), ...dataSheets(report)]);
}

function bridgesPage(bridges: readonly Bridge[], at: number, report: Report): SheetOut {
  const days = comparedDays(report);
  const page = new PrintedPage(at === 0 ? "What changed, in brief" : "What changed, by area", LANDSCAPE, true);
  const sentences = bridges.map((each) => `${bridgeInWords(each)}.`);
  page.text(at === 0 ? (sentences[0] as string) : "Skill checks met, area by area.", "title");
  page.text(
    `From ${days.earlier} to ${days.later}, over all groups and ages. Striped: more. White: fewer.`,
    "subtitle",
  );
  for (const sentence of at === 0 ? sentences.slice(1) : sentences) page.text(sentence, "small");
  page.space(4);
  const rows = Array.from({ length: Math.ceil(bridges.length / 2) }, (_, row) => bridges.slice(2 * row, 2 * row + 2));
  const points = Math.min(210, Math.max(ROOM_POINTS, (page.roomLeft - 30) / rows.length));
  for (const row of rows)
    page.chartRow(
      row.map((each) => bridgePicture(each, days)),
      points,
    );
  page.text(CAUTION, "small");
  return page.finished(report);
}

/** The days of both figures, in words. */
export function comparedDays({ settings, provenance }: Report): { earlier: string; later: string } {
  return { earlier: dayOf(provenance.earlier?.settings.asOf) ?? "earlier", later: dayOf(settings.asOf) ?? "later" };
}

function dayOf(asOf: unknown): string | null {
  const day = typeof asOf === "string" ? dayFromIso(asOf) : null;
  return day === null ? null : dayInWords(day);
}
