import type { Table } from "../../tables/table";
import type { ChartOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { barSeries } from "./bar-series";
import type { NumbersBehind } from "./chart-grid";
import { ChartPage, type ChartPlace } from "./chart-page";
import { type Row, readTable, type TableReader } from "./read-table";
import { CATEGORIES, ratedOf } from "./sentences/ratings";
import { percentOf } from "../../words/numbers";

const PIXELS_OF_A_BAR = 34;
const PIXELS_BESIDE_BARS = 130;

/** Progress categories of each outcome, and the summary statements made of them; null where nobody is rated. */
export function ratingsCharts(table: Table, report: Report): SheetOut | null {
  const read = readTable(table);
  const first = table.rows.filter((row) => read.number(row, "statement") === 1);
  if (!first.some((row) => ratedOf(read, row).rated > 0)) return null;
  const page = new ChartPage(table, report, READING, [{ width: 44 }, ...PARTS.map(() => ({ width: 14 }))]);
  const pixels = (bars: number) => PIXELS_BESIDE_BARS + bars * PIXELS_OF_A_BAR;
  const [above] = page.places(1, 1, pixels(first.length)) as [ChartPlace];
  const [below] = page.places(1, 1, pixels(table.rows.length)) as [ChartPlace];
  return page.finished([
    categoriesChart(read, first, page.numbers, above),
    statementsChart(read, table.rows, page.numbers, below),
  ]);
}

const READING =
  "Progress categories, from the levels at entry and exit; the number of children rated stands in brackets. A bar of few children moves a great deal when one more is rated, and children who leave unrated may differ.";

const PARTS = [
  { name: "a: gained no skill", look: "lined" },
  { name: "b: gained skills, not nearer to children of the same age", look: "hollow" },
  { name: "a or b: whether any skill was gained is not recorded", look: "crossed" },
  { name: "c: nearer to children of the same age", look: "pale" },
  { name: "d: reached children of the same age", look: "striped" },
  { name: "e: with children of the same age at entry and exit", look: "solid" },
] as const;

function categoriesChart(read: TableReader, rows: readonly Row[], numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const words = rows.map((row) => {
    const counts = CATEGORIES.map((key) => `${key === "aOrB" ? "a or b" : key} ${read.number(row, key) ?? 0}`);
    return `${read.text(row, "outcome")}, ${ratedOf(read, row).rated} rated: ${counts.join(", ")}`;
  });
  return {
    kind: "bar share stacked",
    title: "How the children rated are shared out over the progress categories",
    altText: `Stacked bars, one an outcome, of children by progress category a to e. ${words.join("; ")}.`,
    ...place,
    series: barSeries(
      PARTS,
      rows.map((row) => ({
        label: `${read.text(row, "outcome")} (${ratedOf(read, row).rated})`,
        values: CATEGORIES.map((key) => read.number(row, key)),
      })),
      numbers,
    ),
    x: { title: "", reversed: true },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "right",
  };
}

const STATEMENTS: Readonly<Record<number, string>> = { 1: "grew faster by exit", 2: "left at the level of peers" };

function statementsChart(read: TableReader, rows: readonly Row[], numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const statements = rows.map((row) => ({
    name: `${read.text(row, "outcome")}: ${STATEMENTS[read.number(row, "statement") ?? 0]}`,
    count: read.number(row, "count") ?? 0,
    of: read.number(row, "of") ?? 0,
  }));
  const words = statements.map(({ name, count, of }) => `${name} ${percentOf(count, of)}`);
  return {
    kind: "bar share stacked",
    title: "For how many of the children counted each summary statement holds",
    altText: `Bars, two an outcome: the share of children for whom each summary statement holds. ${words.join("; ")}.`,
    ...place,
    series: barSeries(
      [
        { name: "The statement holds", look: "solid" },
        { name: "It does not", look: "hollow" },
      ],
      statements.map(({ name, count, of }) => ({ label: `${name} (${count} of ${of})`, values: [count, of - count] })),
      numbers,
    ),
    x: { title: "", reversed: true },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "right",
  };
}
