import { metBetween } from "../cohort/interval";
import type { AgeClock } from "../age/correction";
import type { Day } from "../age/day";
import { estimateAgeWhenMet } from "../statistics/age-when-met";
import type { TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const DAYS_PER_WEEK = 7;
const SHARES = [0.25, 0.5, 0.75] as const;

const COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "children", label: "Children without the skill at enrolment", unit: "children" },
  { key: "gained", label: "Gained since", unit: "children" },
  { key: "p25Weeks", label: "25% had gained it after", unit: "weeks" },
  { key: "p50Weeks", label: "Half had gained it after", unit: "weeks" },
  { key: "p75Weeks", label: "75% had gained it after", unit: "weeks" },
  { key: "method", label: "Method", unit: "text" },
  { key: "reason", label: "Why not estimated", unit: "text" },
];

interface DaysSince {
  readonly after: number[];
  readonly by: number[];
}

/** The second clock: weeks from the first enrolment to the skill, for children observed who had not met it by then. */
export function sinceEnrollment(context: TableContext): Table<"since-enrollment"> {
  return {
    id: "since-enrollment",
    title: "Weeks from enrolment until each skill was met",
    population:
      "Children ever followed up to the as-of date and observed for the skill who had not met it by the day of their first enrolment",
    columns: COLUMNS,
    rows: context.cohort.skills.map((skill, index) => [skill.id, ...figures(daysSince(context, index))]),
    notes: [
      "Days are counted from the first enrolment, whatever the child's age; an interval that began before it is cut there.",
      "Children grow while they are followed: these times describe the program's records and say nothing about what caused a skill.",
    ],
  };
}

function figures({ after, by }: DaysSince): TableValue[] {
  const estimate = estimateAgeWhenMet({
    after: Float64Array.from(after),
    by: Float64Array.from(by),
    shares: SHARES,
    ages: [],
  });
  const weeks = estimate.percentiles.map(({ age }) => (age === null ? null : age / DAYS_PER_WEEK));
  const [p25 = null, p50 = null, p75 = null] = weeks;
  return [after.length, by.filter(Number.isFinite).length, p25, p50, p75, estimate.method, estimate.reason];
}

function daysSince({ cohort, attainment, asOf }: TableContext, skill: number): DaysSince {
  const days: DaysSince = { after: [], by: [] };
  cohort.ids.forEach((_, child) => {
    const enrolled = cohort.following.firstDayUpTo(child, asOf);
    const between = metBetween(attainment, child * attainment.skillCount + skill, cohort.clocks[child] as AgeClock);
    if (enrolled === null || !between || hadBy(between.by, enrolled)) return;
    days.after.push(Math.max(0, between.after - enrolled));
    days.by.push(between.by === null ? Infinity : between.by - enrolled);
  });
  return days;
}

function hadBy(met: Day | null, enrolled: Day): boolean {
  return met !== null && met <= enrolled;
}
