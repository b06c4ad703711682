import { CAUTION } from "../../../words/cautions";
import { counted, plural, shareOf } from "../../../words/numbers";
import { PLAN_WITHIN_DAYS, WITHOUT_PLAN_IN_TIME } from "../../../tables/referral-steps-sets";
import { tableOf } from "../../answer/finding";
import type { BarPicture } from "../../answer/picture";
import { referralToPlan } from "../../answer/referral-to-plan";
import type { Report } from "../../report";
import { countAxis } from "../count-axis";
import { periodInWords } from "../page";
import { type Row, readTable, type TableReader } from "../read-table";
import type { TitledSheet } from "./area-page";
import { type PageColumn, pageTable } from "./page-table";
import { CAUTION_POINTS, PrintedPage } from "./printed-page";
import { LANDSCAPE } from "./widths";

/** From referral to plan: one bar that narrows, how long each step took, and the plans that were late. */
export function stepsPage(report: Report): TitledSheet[] {
  const table = tableOf(report, "referral-steps");
  if (!table) return [];
  const read = readTable(table);
  const { headline, below, picture } = referralToPlan(report);
  const page = new PrintedPage("From referral to plan", LANDSCAPE, true);
  page.text(headline, "title");
  page.text(`${below.join(" ")} ${periodInWords(report)}.`, "subtitle");
  page.space(4);
  const late = latePicture(read, table.rows);
  page.chartRow([...(picture ? [picture] : []), ...(late ? [late] : [])], 150);
  page.space(4);
  pageTable(page, columns(read), table.rows);
  page.space(4);
  page.shortNotes(NOTES, CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: headline }];
}

const NOTES: readonly string[] = [
  `In time: within ${PLAN_WITHIN_DAYS} days of receipt (34 CFR 303.310). Judged are the referrals received ${PLAN_WITHIN_DAYS + 1} days or more before the last day of the period, whatever came of them. For the plan, referrals found not eligible are left out.`,
  "The rule does not count days on which a family could not be reached. The records do not have those days, so every day counts here.",
  "Half took it within: open referrals count as still waiting. Likely range: none from fewer than 20.",
];

function columns(read: TableReader): PageColumn<Row>[] {
  const number =
    (key: string, decimals = 0) =>
    (row: Row) =>
      read.number(row, key)?.toFixed(decimals) ?? "–";
  const inTime = (row: Row) =>
    read.number(row, "of45") === null ? "–" : shareOf(read.number(row, "within45") ?? 0, read.number(row, "of45") ?? 0);
  return [
    {
      heading: "Step",
      breadth: 4,
      align: "left",
      value: (row) => STEP_NAMES[read.text(row, "step")] ?? read.text(row, "step"),
    },
    {
      heading: "Referrals",
      breadth: 2,
      align: "middle",
      value: (row) => countOf(read, row),
    },
    { heading: "Likely range", breadth: 2, align: "middle", value: (row) => rangeOf(read, row) },
    { heading: "Half took it within, days", breadth: 2, align: "middle", value: number("medianDays") },
    { heading: `In time (${PLAN_WITHIN_DAYS} days), of those due`, breadth: 2, align: "middle", value: inTime },
  ];
}

const STEP_NAMES: Readonly<Record<string, string>> = {
  referred: "Referred",
  received: "Received, of those referred",
  evaluated: "Evaluated, of those received",
  eligible: "Found eligible, of those evaluated with an answer",
  plan: "Plan in place, of those eligible",
  "late, family reason": "Late for a reason of the family (the rule's exception)",
  "late, program reason": "Late for a reason of the program",
  "late, no reason named": "Late, no reason named",
  "closed before day 45": "Closed before day 45 without a plan",
};

function countOf(read: TableReader, row: Row): string {
  const of = read.number(row, "of") ?? 0;
  return of === 0 ? "none" : shareOf(read.number(row, "count") ?? 0, of);
}

/** `25% to 75%`; none from fewer than 20. */
export function rangeOf(read: TableReader, row: Row): string {
  const [lower, upper] = [read.number(row, "lower"), read.number(row, "upper")];
  if (lower === null || upper === null || (read.number(row, "of") ?? 0) < 20) return "–";
  return `${Math.round(100 * lower)}% to ${Math.round(100 * upper)}%`;
}

const LOOKS = ["hollow", "striped", "lined", "crossed"] as const;

function latePicture(read: TableReader, rows: readonly Row[]): BarPicture | null {
  const row = (step: string) => rows.find((each) => read.text(each, "step") === step);
  const plan = row("plan");
  const judged = plan ? (read.number(plan, "of45") ?? 0) : 0;
  const within = plan ? (read.number(plan, "within45") ?? 0) : 0;
  if (within === judged) return null;
  const parts = WITHOUT_PLAN_IN_TIME.map(([step], at) => {
    const found = row(step);
    return {
      name: STEP_NAMES[step] ?? step,
      look: LOOKS[at] ?? ("pale" as const),
      count: (found && read.number(found, "count")) ?? 0,
    };
  });
  return {
    kind: "bar stacked",
    title: `Plans due: ${counted(within)} of ${plural(judged, "referral", "referrals")} in time`,
    altText: `A bar of the ${judged} referrals whose plan was due: ${within} within ${PLAN_WITHIN_DAYS} days; ${parts.map(({ name, count }) => `${name.toLowerCase()} ${count}`).join("; ")}.`,
    parts: [
      { name: `Within ${PLAN_WITHIN_DAYS} days`, look: "solid" },
      ...parts.filter(({ count }) => count > 0).map(({ name, look }) => ({ name, look })),
    ],
    bars: [
      { label: "Plans due", values: [within, ...parts.filter(({ count }) => count > 0).map(({ count }) => count)] },
    ],
    x: { title: "", hidden: true },
    y: countAxis("Referrals", judged),
    legend: "bottom",
  };
}
