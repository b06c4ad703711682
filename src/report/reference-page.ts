import { understandingFileChapter } from "../records/understanding/file-page";
import { SETTING_CATALOGUE, SETTING_NAMES, usualWritten, type SettingName } from "../settings/settings";
import { TABLE_CATALOGUE, TABLE_IDS } from "../tables/catalogue";
import type { TableId } from "../tables/table";

/** The page that lists every table, every setting and every key of the understanding file, made from their declarations. */
export function referencePage(): string {
  return [
    "# Tables, settings and the understanding file",
    "",
    "This page is made from the program's own declarations. METHOD.md says how each number is counted.",
    "",
    "## Tables",
    "",
    "`--tables` of `report` takes these ids. *Internal* tables have rows of single children: they are made only when you name them,",
    "and never leave the program. *Release* says which tables `windowline release` takes.",
    "",
    "| id | sheet | what it says | needs | release |",
    "| --- | --- | --- | --- | --- |",
    ...TABLE_IDS.map(tableRow),
    "",
    "## Settings",
    "",
    "The names are the same in the pane, in a settings range of a worksheet function, and on the command line (`--entered-by` for",
    "`enteredBy`). What you leave out is as usual.",
    "",
    "| setting | usual | what it does |",
    "| --- | --- | --- |",
    ...SETTING_NAMES.map(settingRow),
    "",
    ...understandingFileChapter(),
  ].join("\n");
}

function tableRow(id: TableId): string {
  const { name, about, needs, internal, releasable } = TABLE_CATALOGUE[id];
  const release = internal ? "never (internal)" : releasable ? "yes" : "no";
  return `| \`${id}\` | ${name} | ${about} | ${needsInWords(needs)} | ${release} |`;
}

function needsInWords(needs: (typeof TABLE_CATALOGUE)[TableId]["needs"]): string {
  if (needs === null) return "";
  return needs === "changes" ? "An earlier workbook or report (`windowline changed`)" : capital(needs);
}

function settingRow(name: SettingName): string {
  const declared: { about: string; leftOut?: string } = SETTING_CATALOGUE[name];
  const usual = usualWritten(name);
  const written = Array.isArray(usual) ? usual.join(", ") : usual;
  const shown = written === null || written === "" ? (declared.leftOut ?? "not set") : `\`${String(written)}\``;
  return `| \`${name}\` | ${shown} | ${declared.about} |`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
