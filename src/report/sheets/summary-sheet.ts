import type { SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { CAUTIONS } from "./cautions";
import { portraitPage } from "./page";
import { sentencesOf } from "./sentences/sentences";
import { sheetNameOf } from "./sheet-plan";
import { SheetDraft } from "./sheet-draft";
import { counted, listed, plural } from "../../words/numbers";
import { settingDay } from "./setting-day";

/** What a reader needs first: what was asked, who was counted, what was found, what to beware of, where to look. */
export function summarySheet(report: Report, contents: readonly Content[]): SheetOut {
  const draft = new SheetDraft("Summary", [{ width: 26 }, { width: 78 }]);
  const asOf = settingDay(report.settings, "asOf") ?? "no date given";
  draft.spanning(`Skills met: what the records say on ${asOf}`, "title");
  draft.spanning(`${plural(report.print.followed, "child", "children")} followed that day`, "subtitle");
  section(draft, "What was asked", asked(report, asOf));
  section(draft, "What was found", found(report));
  section(draft, "Rows used", rowsUsed(report));
  section(
    draft,
    "Beware",
    CAUTIONS.map((caution) => ["", caution]),
  );
  section(
    draft,
    "Sheets",
    contents.map(({ sheet, about }) => [sheet, about]),
  );
  const isShort = draft.heightPoints <= EASY_TO_READ_ON_ONE_PAGE;
  return draft.finished({ ...portraitPage(report), fit: isShort ? "one page" : "one page wide" });
}

/** Points of height that a portrait page holds in print of three quarters of its size. */
const EASY_TO_READ_ON_ONE_PAGE = 950;

/** A line of the list of sheets. */
export interface Content {
  readonly sheet: string;
  readonly about: string;
}

type Line = readonly [label: string, text: string];

function section(draft: SheetDraft, heading: string, lines: readonly Line[]): void {
  draft.blank();
  draft.spanning(heading, "section");
  draft.addRows(
    lines.map(([label, text]) => [
      { value: label, style: "label" },
      { value: text, style: "note" },
    ]),
  );
}

function asked({ settings, print }: Report, asOf: string): Line[] {
  const by = settings["by"];
  const groups = Array.isArray(by) && by.length > 0 ? `By ${listed(by.map(String))}` : "All children together";
  return [
    ["Period", `${settingDay(settings, "from") ?? "not given"} to ${asOf}`],
    ["Figures true for", asOf],
    [
      "Children followed",
      `${counted(print.followed)} on ${asOf}; ${counted(print.everFollowed)} ever followed by then`,
    ],
    ["Groups", groups],
  ];
}

function found(report: Report): Line[] {
  return report.tables.flatMap((table) =>
    sentencesOf(table, report).map((sentence, index): Line => [
      index === 0 ? sheetNameOf(table.id) : "",
      stopped(sentence),
    ]),
  );
}

function stopped(sentence: string): string {
  return sentence.endsWith(".") ? sentence : `${sentence}.`;
}

function rowsUsed({ input, findings }: Report): Line[] {
  const lines = input.map(({ table, rows, used }): Line => {
    const out = rows - used;
    const left = out === 0 ? "none left out" : `${counted(out)} left out, by reason on the sheet Method`;
    return [table, `${counted(used)} of ${plural(rows, "row", "rows")} used; ${left}`];
  });
  const open = findings.filter(({ severity }) => severity !== "note").length;
  const said =
    open === 0
      ? "None that needs a person"
      : `${plural(open, "cell needs", "cells need")} a person; see the sheet Findings`;
  return [...lines, ["Findings", said]];
}
