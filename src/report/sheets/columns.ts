import { dayFromIso } from "../../age/day";
import type { TableColumn, TableUnit, TableValue } from "../../tables/table";
import type { CellFormat, CellOut } from "../../workbook/sheets";
import { widthInDigits } from "./text-width";

const FORMATS: Readonly<Record<TableUnit, CellFormat | null>> = {
  text: null,
  children: "count",
  "child-skills": "count",
  count: "count",
  pairs: "count",
  share: "share",
  months: "months",
  "months (mean length)": "months",
  weeks: "months",
  days: "count",
  date: "date",
  percent: "percent",
  number: "decimal2",
  "child-months": "months",
  "per 100 child-months": "decimal2",
};

/** Keys whose figures want other decimals than their unit. */
const FORMATS_BY_KEY: Readonly<Record<string, CellFormat>> = {
  expectedShare: "wholeShare",
  largestGradient: "decimal3",
  p: "decimal3",
  holm: "decimal3",
  bh: "decimal3",
  childMonths: "months",
  ageMonths: "months",
  priority: "count",
  order: "count",
};

const UNITS_IN_WORDS: Partial<Record<TableUnit, string>> = {
  months: "months",
  "months (mean length)": "months",
  weeks: "weeks",
  days: "days",
  share: "%",
  percent: "%",
};

export function formatOf(column: TableColumn): CellFormat | null {
  return FORMATS_BY_KEY[column.key] ?? FORMATS[column.unit];
}

/** The heading as printed: label with unit. */
export function headingOf(column: TableColumn): string {
  const unit = UNITS_IN_WORDS[column.unit];
  return unit === undefined || column.label.includes(unit) ? column.label : `${column.label}, ${unit}`;
}

export function isText(column: TableColumn): boolean {
  return column.unit === "text";
}

/** The value as a cell: ISO dates become days, yes and no words, and what cannot be estimated stays empty. */
export function cellOf(value: TableValue, column: TableColumn): CellOut {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (column.unit !== "date" || typeof value !== "string") return value;
  return dayFromIso(value) ?? value;
}

/** Characters, wide enough for the longest words of the heading and the usual figures. */
export function widthOf(column: TableColumn, rows: readonly (readonly TableValue[])[], index: number): number {
  const heading = headingOf(column);
  const inFourLines = Math.ceil(heading.length / 4) + 2;
  if (!isText(column))
    return Math.max(column.unit === "date" ? 12 : 7.5, widestWord(heading) + HEADING_MARGIN, inFourLines);
  const longest = rows.reduce((most, row) => Math.max(most, String(row[index] ?? "").length), 0);
  const widest = (longest > SENTENCES_CHARACTERS ? WIDEST_SENTENCES : WIDEST)[column.key] ?? 26;
  return Math.min(Math.max(longest + 2, longestWord(heading) + 2, 8), widest);
}

const SENTENCES_CHARACTERS = 80;
const WIDEST_SENTENCES: Readonly<Record<string, number>> = { reason: 60, nextStep: 44 };

const WIDEST: Readonly<Record<string, number>> = { reason: 18, nextStep: 36, method: 18, band: 17 };

/** Right-aligned headings stand a little in from the edge. */
const HEADING_MARGIN = 1.7;
const BOLD = 1.08;

function widestWord(text: string): number {
  return Math.max(...text.split(" ").map((word) => widthInDigits(word) * BOLD));
}

function longestWord(text: string): number {
  return Math.max(...text.split(" ").map((word) => word.length));
}
