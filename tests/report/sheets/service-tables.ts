import type { SitesBeside } from "../../../src/tables/trend-sites";
import type { Report } from "../../../src/report/report";
import type { Table, TableColumn, TableId, TableUnit, TableValue } from "../../../src/tables/table";
import { smallReport } from "./fixture";

/** Tables made by hand: no figure in them comes from the program. */

const none = [null, null, null, null];

/** North has 8 referrals where 4 are expected, River 1 where 4 are. `holm` is that of North. */
export function referralsTable(holm = 0.03): Table {
  const keys = ["expected", "ratio", "lower", "upper", "p", "holm", "bh"];
  const funnel = ["funnel95Lower", "funnel95Upper", "funnel998Lower", "funnel998Upper"];
  return {
    ...named("referrals", "Referrals for the time children were in the program"),
    columns: columns(
      [
        ["dimension", "text"],
        ["value", "text"],
        ["children", "children"],
        ["childMonths", "child-months"],
      ],
      [
        ["referrals", "count"],
        ["childrenReferred", "children"],
        ["per100ChildMonths", "per 100 child-months"],
      ],
      [...keys, ...funnel].map((key): [string, TableUnit] => [key, "number"]),
    ),
    rows: [
      ["site", "North", 60, 150, 8, 7, 16 / 3, 4, 2, 0.86, 3.94, 0.015, holm, holm, 0.25, 2, 0, 2.75],
      ["site", "River", 60, 150, 1, 1, 2 / 3, 4, 0.25, 0.01, 1.39, 0.1, 0.1, 0.1, 0.25, 2, 0, 2.75],
      ["area", "speech", 120, 300, 9, 8, 3, null, null, null, null, null, null, null, ...none],
      ["quarter", "2026-Q3", 120, 300, 9, 8, 3, 9, 1, 0.46, 1.9, 1, 1, 1, 0.44, 1.67, 0.22, 2.22],
    ],
  };
}

export function scanTable(p = 0.004): Table {
  return {
    ...named("referral-scan", "Places and months with more referrals than expected"),
    columns: columns(
      [
        ["place", "text"],
        ["area", "text"],
        ["firstMonth", "text"],
        ["lastMonth", "text"],
      ],
      [
        ["observed", "count"],
        ["expected", "number"],
        ["ratio", "number"],
      ],
      [
        ["logLikelihoodRatio", "number"],
        ["p", "number"],
        ["pSameMonths", "number"],
      ],
    ),
    rows: [
      ["River", "speech", "2025-12", "2026-01", 7, 1.25, 5.6, 9, p, 0.02],
      ["all", "all", "2026-03", "2026-03", 2, 0.5, 4, 1.5, 0.9, 0.8],
    ],
  };
}

export const SCANNED_MONTHS: Report["print"]["scannedMonths"] = [
  { month: "2025-11", observed: 1, expected: 0.5 },
  { month: "2025-12", observed: 4, expected: 0.5 },
  { month: "2026-01", observed: 3, expected: 0.75 },
  { month: "2026-02", observed: 0, expected: 1 },
];

/** 20 referred, 18 received, 12 evaluated, 8 of 10 with an answer eligible, 6 with a plan; of 9 judged 5 in time. */
export function stepsTable(judged = 9): Table {
  const within = Math.min(5, judged);
  return {
    ...named("referral-steps", "How far referrals came, and how long they took"),
    columns: columns(
      [
        ["step", "text"],
        ["of", "count"],
        ["count", "count"],
      ],
      [
        ["share", "share"],
        ["lower", "share"],
        ["upper", "share"],
      ],
      [
        ["medianDays", "days"],
        ["within45", "count"],
        ["of45", "count"],
      ],
    ),
    rows: [
      ["referred", 20, 20, 1, null, null, null, null, null],
      ["received", 20, 18, 0.9, null, null, null, null, null],
      ["evaluated", 18, 12, 12 / 18, null, null, 20, null, null],
      ["eligible", 10, 8, 0.8, null, null, null, null, null],
      ["plan", 8, 6, 0.75, null, null, null, within, judged],
      ["late, family reason", 4, 1, 1 / 4, null, null, null, null, null],
      ["late, program reason", 4, 2, 2 / 4, null, null, null, null, null],
      ["late, no reason named", 4, 0, 0, null, null, null, null, null],
      ["closed before day 45", 4, 1, 1 / 4, null, null, null, null, null],
    ],
  };
}

/** Ten children: a 1, b 2, none open between them, c 3, d 2, e 2; of 16 who left. */
export function ratingsTable(): Table {
  const counts = [1, 2, 0, 3, 2, 2];
  return {
    ...named("ratings", "Progress between entry and exit ratings"),
    columns: columns(
      [["outcome", "text"], ...["a", "b", "aOrB", "c", "d", "e"].map((key): [string, TableUnit] => [key, "children"])],
      [
        ["statement", "count"],
        ["count", "children"],
        ["of", "children"],
      ],
      [
        ["percent", "percent"],
        ["coverage", "share"],
      ],
    ),
    rows: [
      ["Getting things done", ...counts, 1, 5, 8, 62.5, 10 / 16],
      ["Getting things done", ...counts, 2, 4, 10, 40, 10 / 16],
    ],
  };
}

/** Three quarters of one area with two skills: 6 of 12, 9 of 12, 12 of 16 child-skills. */
export function trendTable(provisional: boolean | null = true): Table {
  const row = (quarter: string, skill: string, met: number, of: number, last = false): TableValue[] => {
    return [quarter, skill, "gross motor", 20, met, of, met / of, 0.2, 0.9, last ? provisional : false];
  };
  return {
    ...named("trend", "Children who have met each skill, quarter by quarter"),
    columns: columns(
      [
        ["quarter", "text"],
        ["skill", "text"],
        ["area", "text"],
        ["children", "children"],
      ],
      [
        ["met", "children"],
        ["assessed", "children"],
        ["shareMet", "share"],
      ],
      [
        ["lower", "share"],
        ["upper", "share"],
        ["provisional", "text"],
      ],
    ),
    rows: [
      row("2026-Q1", "GM1", 2, 6),
      row("2026-Q1", "GM2", 4, 6),
      row("2026-Q2", "GM1", 4, 6),
      row("2026-Q2", "GM2", 5, 6),
      row("2026-Q3", "GM1", 5, 8, true),
      row("2026-Q3", "GM2", 7, 8, true),
    ],
    notes: ["2026-Q3 is provisional: looks are still to be entered.", "Warning: GM1 rises and falls."],
  };
}

/** Invented: two sites that share the checks of the trend's first and last quarter. */
const SITES: SitesBeside = {
  area: "gross motor",
  quarters: ["2026-Q1", "2026-Q3"],
  pooled: [
    { count: 6, of: 12 },
    { count: 12, of: 16 },
  ],
  sites: [
    {
      name: "North",
      shares: [
        { count: 4, of: 6 },
        { count: 5, of: 6 },
      ],
    },
    {
      name: "River",
      shares: [
        { count: 2, of: 6 },
        { count: 7, of: 10 },
      ],
    },
  ],
  standardised: null,
};

/** Correcting stopped for two children in the second quarter. */
export function serviceReport(tables: readonly Table[]): Report {
  const report = smallReport();
  const quarters = ["2026-Q1", "2026-Q2", "2026-Q3"].map((quarter, at) => ({
    quarter,
    correctionStops: at === 1 ? 2 : 0,
  }));
  const trend = { quarters, sites: [SITES] };
  return { ...report, tables, print: { ...report.print, scannedMonths: SCANNED_MONTHS, trend } };
}

function named(id: TableId, title: string) {
  return { id, title, population: "Invented children", notes: [] };
}

function columns(...lists: readonly (readonly [key: string, unit: TableUnit])[][]): TableColumn[] {
  return lists.flat().map(([key, unit]) => ({ key, label: key, unit }));
}
