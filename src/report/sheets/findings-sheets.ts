import type { Finding, Severity } from "../../records/findings/finding";
import { placeInWords } from "../../workbook/sources";
import { MOST_ROWS, type SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { landscapePage } from "./page";
import { SheetDraft } from "./sheet-draft";
import { listed, plural } from "../../words/numbers";

/** The findings by rule, then every one of them with its cell; on more sheets where one cannot hold them. */
export function findingsSheets(report: Report, rowsPerSheet = MOST_ROWS - 10): SheetOut[] {
  const sorted = [...report.findings].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
  const parts = Math.max(1, Math.ceil(sorted.length / rowsPerSheet));
  const cells = Array.from({ length: parts }, (_, part) => {
    const name = part === 0 ? "Problems found" : `Problems found ${part + 1}`;
    return cellsSheet(name, sorted.slice(part * rowsPerSheet, (part + 1) * rowsPerSheet), report);
  });
  return [byRuleSheet(sorted, report), ...cells];
}

const ORDER: readonly Severity[] = ["error", "warning", "note"];

const MEANING: Readonly<Record<Severity, string>> = {
  error: "to fix: the row is not used",
  warning: "to check: used as it is",
  note: "for information",
};

const KIND: Readonly<Record<Severity, string>> = { error: "to fix", warning: "to check", note: "for information" };

function byRuleSheet(findings: readonly Finding[], report: Report): SheetOut {
  const draft = new SheetDraft("Problems by rule", [
    { width: 34, style: "wrapped" },
    { width: 24, style: "wrapped" },
    { width: 14, style: "text" },
    { width: 8, style: "text", format: "count" },
    { width: 34, style: "wrapped" },
    { width: 42, style: "wrapped" },
  ]);
  draft.spanning(titleOf(findings), "title");
  draft.spanning("One row per rule and table. The sheet “Problems found” has each cell.", "subtitle");
  const headerRow = draft.rowCount;
  draft.row(headings(["Kind", "Rule", "Table", "Cells", "Expected", "What to do"], [3]));
  draft.body(grouped(findings).map(({ first, count }) => ruleRow(first, count)));
  return draft.finished(landscapePage(report, headerRow), { frozen: { rows: headerRow + 1, columns: 0 } });
}

function titleOf(findings: readonly Finding[]): string {
  const count = (severity: Severity) => findings.filter((each) => each.severity === severity).length;
  if (findings.length === 0) return "No problems found: every row could be read and used";
  const said = [
    [count("error"), "cell to fix", "cells to fix"],
    [count("warning"), "cell to check", "cells to check"],
    [count("note"), "for information", "for information"],
  ] as const;
  const parts = said.filter(([number]) => number > 0).map(([number, one, many]) => plural(number, one, many));
  return `Problems found: ${listed(parts)}`;
}

function ruleRow({ severity, rule, table, expected, advice }: Finding, count: number) {
  return [MEANING[severity], rule, table, count, expected, advice];
}

interface RuleGroup {
  readonly first: Finding;
  readonly count: number;
}

function grouped(findings: readonly Finding[]): RuleGroup[] {
  const groups = new Map<string, { first: Finding; count: number }>();
  for (const finding of findings) {
    const key = JSON.stringify([finding.severity, finding.rule, finding.table]);
    const group = groups.get(key);
    if (group) group.count += 1;
    else groups.set(key, { first: finding, count: 1 });
  }
  return [...groups.values()];
}

function cellsSheet(name: string, findings: readonly Finding[], report: Report): SheetOut {
  const rows = findings.map((f) => [KIND[f.severity], f.table, placeInWords(f), f.cell, f.rule, f.expected, f.advice]);
  const draft = new SheetDraft(
    name,
    CELL_COLUMNS.map(([least, most, style], column) => ({
      width: fittingWidth(rows, column, least, most),
      style,
    })),
  );
  draft.spanning(
    `${plural(findings.length, "problem", "problems")} found: the cell, what was expected, what to do`,
    "title",
  );
  draft.spanning("The text of a cell is never repeated here: look it up at its address.", "subtitle");
  const headerRow = draft.rowCount;
  draft.row(headings(["Kind", "Table", "Sheet", "Cell", "Rule", "Expected", "What to do"], []));
  draft.body(rows);
  const range = { top: headerRow, left: 0, bottom: draft.rowCount - 1, right: 6 };
  const tables = findings.length === 0 ? [] : [{ name: `Table_${name.replaceAll(" ", "")}`, range }];
  return draft.finished(landscapePage(report, headerRow), { frozen: { rows: headerRow + 1, columns: 0 }, tables });
}

/** Wide enough that most rows take one line, and no wider than the page can show in print that can be read. */
const CELL_COLUMNS = [
  [10, 15, "text"],
  [9, 14, "text"],
  [9, 18, "wrapped"],
  [8, 12, "text"],
  [8, 26, "wrapped"],
  [20, 44, "wrapped"],
  [24, 58, "wrapped"],
] as const;

function fittingWidth(rows: readonly (readonly string[])[], column: number, least: number, most: number): number {
  const longest = rows.reduce((sofar, row) => Math.max(sofar, (row[column] ?? "").length), 0);
  return Math.min(Math.max(longest + 2, least), most);
}

function headings(texts: readonly string[], right: readonly number[]) {
  return texts.map((value, index) => ({
    value,
    style: right.includes(index) ? ("headingRight" as const) : ("heading" as const),
  }));
}
