import type { SeriesLook } from "../../../src/workbook/series-looks";
import type { ChartOut, SheetOut } from "../../../src/workbook/sheets";

/** February 29, 2024, and its serials. Source: the 1904 system counts 1,462 days less (ECMA-376 Part 1, 18.17.4.1). */
export const LEAP_DAY = { day: 19_782, serial1900: 45_351, serial1904: 43_889 };

/** One of everything a sheet may ask for. */
export const REPORT_SHEET: SheetOut = {
  name: "Met by age group",
  columns: [
    { width: 30, style: "text" },
    { width: 11, style: "text", format: "date" },
    { width: 9, style: "text", format: "share" },
    { width: 9, style: "text", format: "count" },
  ],
  rows: [
    [{ value: "Three in four have met it", style: "title" }],
    [],
    [
      { value: "Skill", style: "heading" },
      { value: "First day", style: "headingRight" },
      { value: "Share", style: "headingRight" },
      { value: "Children", style: "headingRight" },
    ],
    ["Sits alone", LEAP_DAY.day, 0.75, 1204],
    ["Walks", null, null, null],
    ["Waves", LEAP_DAY.day + 1, 0.5, 3],
    [
      { value: "All", style: "total" },
      { value: null, style: "total" },
      { value: 0.6, style: "total", format: "share" },
      { value: true, style: "total" },
    ],
  ],
  rowHeights: new Map([[0, 25]]),
  frozen: { rows: 3, columns: 1 },
  gridlines: false,
  merged: [{ top: 0, left: 0, bottom: 0, right: 3 }],
  tables: [{ name: "Table_MetByBand", range: { top: 2, left: 0, bottom: 5, right: 3 } }],
  charts: [
    {
      kind: "bar share stacked",
      title: "Each area, all ages",
      altText: "Stacked bars: three in four children have met the skill.",
      at: { row: 8, column: 0 },
      widthPixels: 320,
      heightPixels: 200,
      series: [
        {
          name: "Met",
          x: { top: 3, left: 0, bottom: 5, right: 0 },
          y: { top: 3, left: 2, bottom: 5, right: 2 },
          look: "solid",
        },
        {
          name: "Children",
          x: { top: 3, left: 0, bottom: 5, right: 0 },
          y: { top: 3, left: 3, bottom: 5, right: 3 },
          look: "hollow",
        },
      ],
      x: { title: "", reversed: true },
      y: { title: "Share of children", min: 0, max: 1, step: 0.25, format: "wholeShare" },
      legend: "bottom",
    },
    {
      kind: "curve",
      title: "Reached by age",
      altText: "A line that rises from 5 to 9 months.",
      at: { row: 8, column: 3 },
      widthPixels: 320,
      heightPixels: 200,
      series: (["line", "point", "band", "dashed"] as const).map((look) => ({
        name: look,
        x: { top: 3, left: 2, bottom: 5, right: 2 },
        y: { top: 3, left: 3, bottom: 5, right: 3 },
        look,
      })),
      x: { title: "Months" },
      y: { title: "" },
      legend: "none",
    },
  ],
  print: {
    landscape: true,
    repeatRows: { first: 2, last: 2 },
    fit: "one page wide",
    area: { top: 0, left: 0, bottom: 30, right: 3 },
    footer: "Birth & beyond, as of 2026-09-30",
    header: "Alder Fork",
  },
};

/** One chart of each kind that lines and marks take part in. */
export const LINES_SHEET: SheetOut = {
  ...REPORT_SHEET,
  name: "Lines",
  charts: [
    chartOf("column stacked", ["solid", "hollow", "dashed"]),
    chartOf("line", ["tick", "joined", "lightPoint"]),
    { ...chartOf("curve", ["edge", "line", "point"], true), y: { title: "", min: 0, max: 3, hidden: true } },
    { ...chartOf("bar stacked", ["solid", "hollow"]), y: { title: "Referrals", min: 0, max: 8, step: 2 } },
  ],
};

function chartOf(kind: ChartOut["kind"], looks: readonly SeriesLook[], named = false): ChartOut {
  const range = (left: number) => ({ top: 3, left, bottom: 5, right: left });
  return {
    kind,
    title: `A chart of kind ${kind}`,
    altText: `What the chart of kind ${kind} shows, in words.`,
    at: { row: 8, column: 0 },
    widthPixels: 320,
    heightPixels: 200,
    series: looks.map((look) => ({
      name: look,
      x: range(kind === "curve" ? 2 : 0),
      y: range(3),
      look,
      named: named && look === "point",
    })),
    x: { title: "" },
    y: { title: "" },
    legend: "none",
  };
}
