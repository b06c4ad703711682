import { provenanceLine } from "../again/provenance-line";
import { SETTING_CATALOGUE, SETTING_NAMES, type SettingName } from "../../settings/settings";
import type { SheetOut } from "../../workbook/sheets";
import { placeInWords } from "../../workbook/sources";
import type { Report, SettingsEcho } from "../report";
import { periodInWords, portraitPage } from "./page";
import { SheetDraft } from "./sheet-draft";
import { basisInWords, windowInWords } from "./skill-words";
import { CAUTION, HOW_TO_READ } from "../../words/cautions";
import { DEFINITIONS } from "../../words/definitions";
import { counted, plural } from "../../words/numbers";

/** Everything the figures depend on, so that someone else can make them again. */
export function methodSheet(report: Report): SheetOut {
  const draft = new SheetDraft("Method", [{ width: 34 }, { width: 72 }]);
  draft.spanning("How the figures were made", "title");
  draft.spanning(`${periodInWords(report)}. ${report.tool.name} ${report.tool.version}.`, "subtitle");
  section(
    draft,
    "How to read these figures",
    [CAUTION, ...HOW_TO_READ].map((line) => ["", line]),
  );
  section(draft, "Settings", settingLines(report.settings));
  section(draft, "Rows used and left out", inputLines(report));
  section(
    draft,
    "What was taken for granted, and how often",
    report.print.counted.map((sentence) => ["", sentence]),
  );
  section(draft, "Corrections you made", decisionLines(report));
  section(draft, "Definitions", Object.entries(DEFINITIONS));
  section(draft, "Expected windows, and where they come from", windowLines(report));
  section(
    draft,
    "To make this report again: the same workbook, settings and version give the same bytes",
    provenanceLines(report),
  );
  return draft.finished(portraitPage(report));
}

type Line = readonly [label: string, text: string];

function section(draft: SheetDraft, heading: string, lines: readonly Line[]): void {
  if (lines.length === 0) return;
  draft.blank();
  draft.spanning(heading, "section");
  draft.addRows(
    lines.map(([label, text]) => [
      { value: label, style: "label" },
      { value: text, style: "note" },
    ]),
  );
}

/** Every setting of the run. */
export function settingLines(settings: SettingsEcho): Line[] {
  return SETTING_NAMES.map((name) => [name, `${valueInWords(settings[name])}. ${SETTING_CATALOGUE[name].about}`]);
}

export function valueInWords(value: SettingsEcho[SettingName]): string {
  if (value === null) return "Not set";
  if (typeof value === "object") return value.length === 0 ? "None" : value.join(", ");
  return typeof value === "boolean" ? (value ? "Yes" : "No") : String(value);
}

function inputLines({ input }: Report): Line[] {
  return input.map((use): Line => {
    const { table, file, sheet, address, rows, used, leftOut } = use;
    const where = file === undefined ? `sheet ${sheet}, ${address}` : placeInWords(use, address);
    const reasons = Object.entries(leftOut).map(([reason, count]) => `${reason} (${counted(count)})`);
    const out = reasons.length === 0 ? "None left out." : `Left out: ${reasons.join("; ")}.`;
    return [table, `${counted(used)} of ${plural(rows, "row", "rows")} used (${where}). ${out}`];
  });
}

function decisionLines({ print }: Report): Line[] {
  return print.decisions.length === 0 ? [["", "None."]] : print.decisions.map((decision) => ["", decision]);
}

function windowLines({ print }: Report): Line[] {
  return print.skills.map((skill): Line => {
    const basis = `Age ${skill.ageBasis}. Basis: ${basisInWords(skill)}.`;
    return [`${skill.label} (${skill.id})`, `${windowInWords(skill)}. ${basis}`];
  });
}

function provenanceLines(report: Report): Line[] {
  const { tool, provenance } = report;
  return [
    ["Made with", `${tool.name} ${provenance.version}`],
    ["Fingerprint of the input", `SHA-256 ${provenance.fingerprint}`],
    ["Seed", String(provenance.seed)],
    ["To make it again", provenanceLine(report)],
  ];
}
