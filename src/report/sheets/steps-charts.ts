import { PLAN_WITHIN_DAYS, WITHOUT_PLAN_IN_TIME } from "../../tables/referral-steps-sets";
import type { Table } from "../../tables/table";
import type { ChartOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { barSeries } from "./bar-series";
import type { NumbersBehind } from "./chart-grid";
import { ChartPage, type ChartPlace } from "./chart-page";
import { countAxis } from "./count-axis";
import { readTable } from "./read-table";
import { capital, percentOf, plural } from "../../words/numbers";

const LADDER_PIXELS = 330;
const DAYS_PIXELS = 230;

/** How many took each step of those who could, and how many plans came in time; null where nobody was referred. */
export function stepsCharts(table: Table, report: Report): SheetOut | null {
  const steps = stepsOf(table);
  if (!steps.some(({ step, count }) => step === "referred" && count > 0)) return null;
  const page = new ChartPage(table, report, READING, [
    { width: 40 },
    ...Array.from({ length: 4 }, () => ({ width: 14 })),
  ]);
  const [ladder] = page.places(1, 1, LADDER_PIXELS) as [ChartPlace];
  const [days] = page.places(1, 1, DAYS_PIXELS) as [ChartPlace];
  return page.finished([ladderChart(steps, page.numbers, ladder), daysChart(steps, page.numbers, days)]);
}

const READING =
  "Each step has its own denominator, in brackets. A step that is not taken is mostly one still to come: the latest referrals have had least time.";

interface Step {
  readonly step: string;
  readonly count: number;
  readonly of: number;
  readonly within: number;
  readonly judged: number;
}

function stepsOf(table: Table): Step[] {
  const read = readTable(table);
  return table.rows.map((row) => {
    const number = (key: string) => read.number(row, key) ?? 0;
    return {
      step: read.text(row, "step"),
      count: number("count"),
      of: number("of"),
      within: number("within45"),
      judged: number("of45"),
    };
  });
}

const OF_WHOM: Readonly<Record<string, string>> = {
  received: "of those referred",
  evaluated: "of those received",
  eligible: "of those evaluated, with an answer",
  plan: "of those eligible",
};

const DONE: Readonly<Record<string, string>> = {
  received: "received",
  evaluated: "evaluated",
  eligible: "found eligible",
  plan: "with a plan",
};

function ladderChart(steps: readonly Step[], numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const ladder = steps.filter(({ step }) => Object.hasOwn(OF_WHOM, step));
  const referred = steps.find(({ step }) => step === "referred")?.count ?? 0;
  const words = ladder.map(({ step, count, of }) => `${capital(step)} ${percentOf(count, of)}, ${OF_WHOM[step]}`);
  return {
    kind: "bar stacked",
    title: `Of ${plural(referred, "referral", "referrals")}: ${ladder.map(({ step, count }) => `${DONE[step]} ${count}`).join(", ")}`,
    altText: `Bars, one a step: referrals that have taken it, and those that have not, of those that could. ${words.join("; ")}.`,
    ...place,
    series: barSeries(
      [
        { name: "Has taken the step", look: "solid" },
        { name: "Has not, or not yet", look: "hollow" },
      ],
      ladder.map(({ step, count, of }) => ({
        label: `${capital(step)}, ${OF_WHOM[step]} (${count} of ${of})`,
        values: [count, of - count],
      })),
      numbers,
    ),
    x: { title: "", reversed: true },
    y: countAxis("Referrals", Math.max(...ladder.map(({ of }) => of))),
    legend: "bottom",
  };
}

function daysChart(steps: readonly Step[], numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const { within, judged } = steps.find(({ step }) => step === "plan") ?? { within: 0, judged: 0 };
  const count = (row: string) => steps.find(({ step }) => step === row)?.count ?? 0;
  const parts = [within, ...WITHOUT_PLAN_IN_TIME.map(([row]) => count(row))];
  const late = WITHOUT_PLAN_IN_TIME.map(([row], at) => `${row} ${parts[at + 1]}`).join("; ");
  return {
    kind: "bar stacked",
    title: `Plan within ${PLAN_WITHIN_DAYS} days of receipt: ${within} of the ${plural(judged, "referral", "referrals")} received long enough ago to judge`,
    altText: `A bar of the ${judged} referrals received ${PLAN_WITHIN_DAYS + 1} days ago or longer: plan in time ${percentOf(within, judged)}; ${late}.`,
    ...place,
    series: barSeries(
      [
        { name: `Within ${PLAN_WITHIN_DAYS} days`, look: "solid" },
        { name: "Late, family reason: the rule's exception", look: "hollow" },
        { name: "Late, program reason", look: "striped" },
        { name: "Late, no reason named", look: "lined" },
        { name: `Closed before day ${PLAN_WITHIN_DAYS}`, look: "crossed" },
      ],
      [{ label: `Judged (${within} of ${judged} in time)`, values: parts }],
      numbers,
    ),
    x: { title: "", reversed: true },
    y: countAxis("Referrals", judged),
    legend: "bottom",
  };
}
