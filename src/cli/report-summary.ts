import { fiveFindings } from "../report/answer/five-findings";
import type { Report } from "../report/report";
import { isoInWords } from "../release/words/days";
import { placeInWords } from "../workbook/sources";
import { counted, plural } from "../words/numbers";
import { leftOutLines } from "./left-out";

/** What a run found, in a few lines for the terminal: no child's row, no id. */
export function summaryOf(report: Report, outputs: readonly string[]): string {
  const { settings, print, findings } = report;
  const [from, asOf] = [settings.from, settings.asOf].map((iso) => isoInWords(String(iso)));
  return [
    ...unreadSheets(report),
    ...leftOutLines(report.input),
    `${from} to ${asOf}: ${plural(print.followed, "child", "children")} in the program on the last day, ${counted(print.everFollowed)} ever.`,
    ...fiveFindings(report).map(({ headline }) => `- ${headline}`),
    `Rows used: ${byTable(report.input).map(useOf).join(", ")}.`,
    ...(findings.length === 0
      ? []
      : [`Problems found: ${countsOf(report)}. "windowline check" lists each with its cell.`]),
    ...outputs.map((file) => `Written: ${file}`),
    "Nothing here is a diagnosis: talk with the child's clinician. Local rules and licensed practice decide.",
  ].join("\n");
}

/** A sheet taken for a table that it lacks a heading of: none of its rows is used, and no count says so. */
function unreadSheets({ findings }: Report): string[] {
  const unread = findings.filter(({ rule, severity }) => rule === "heading-unknown" && severity === "error");
  return [
    ...new Set(
      unread.map((each) => `${each.table} in ${placeInWords(each)} was not read: ${each.expected} is missing.`),
    ),
  ];
}

/** Among several files the rows of one table are told together: "windowline check" tells them file by file. */
function byTable(input: Report["input"]): Report["input"] {
  if (input.every(({ file }) => file === undefined)) return input;
  return [...new Set(input.map(({ table }) => table))].map((table) => {
    const own = input.filter((each) => each.table === table);
    const sum = (of: "rows" | "used") => own.reduce((total, each) => total + each[of], 0);
    return { ...(own[0] as Report["input"][number]), rows: sum("rows"), used: sum("used") };
  });
}

function useOf({ table, rows, used }: Report["input"][number]): string {
  const numbers = rows === used ? counted(rows) : `${counted(used)} of ${counted(rows)}`;
  return `${table} ${numbers}`;
}

function countsOf({ findings }: Report): string {
  const of = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
  const [errors, warnings, notes] = [of("error"), of("warning"), of("note")];
  return [
    ...(errors === 0 ? [] : [`${plural(errors, "row", "rows")} that cannot be used`]),
    ...(warnings === 0 ? [] : [`${counted(warnings)} for a person to check`]),
    ...(notes === 0 ? [] : [plural(notes, "note", "notes")]),
  ].join(", ");
}
