import type { AgeClock } from "../age/correction";
import { metBetween } from "../cohort/interval";
import { NO_DAY } from "../records/records";
import { estimateAgeWhenMet } from "../statistics/age-when-met";
import type { TableContext } from "./context";
import { BOOTSTRAP_REPLICATES } from "./estimates";
import type { Table, TableColumn, TableValue } from "./table";

const DAYS_PER_WEEK = 7;
const SHARES = [0.25, 0.5, 0.75] as const;

const COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "children", label: "Children checked without the skill after enrollment", unit: "children" },
  { key: "metAtFirstCheck", label: "Already met at first check after enrollment", unit: "children" },
  { key: "gained", label: "Met since", unit: "children" },
  { key: "p25Weeks", label: "25% had met it after", unit: "weeks" },
  { key: "p50Weeks", label: "Half had met it after", unit: "weeks" },
  { key: "p50LowerWeeks", label: "Half, lower limit", unit: "weeks" },
  { key: "p50UpperWeeks", label: "Half, upper limit", unit: "weeks" },
  { key: "p75Weeks", label: "75% had met it after", unit: "weeks" },
  { key: "method", label: "Method", unit: "text" },
  { key: "reason", label: "Why not estimated", unit: "text" },
];

interface DaysSince {
  readonly after: number[];
  readonly by: number[];
  metAtFirstCheck: number;
}

/** The second clock: weeks from the first enrollment to each skill, for children seen without it then (METHOD.md, section 6). */
export function sinceEnrollment(context: TableContext): Table<"since-enrollment"> {
  return {
    id: "since-enrollment",
    title: "Weeks from enrollment until children met each skill",
    population:
      "Children ever in the program by the as-of date who were checked without the skill on or after the day of their first enrollment, before it was met",
    columns: COLUMNS,
    rows: context.cohort.skills.map((skill, index) => [skill.id, ...figures(context, daysSince(context, index))]),
    notes: [
      "Days are counted from the first enrollment of at least one day, whatever the child's age.",
      "Children whose first check after enrollment already saw the skill, and who were never checked without it, are counted apart: nobody knows whether they met it before or after they enrolled. Children who met it by the day of enrollment are in neither count.",
      "Limits of the interval estimate are percentile-bootstrap limits from the stated seed: approximate, by convention.",
      "Children grow while they are in the program: these times describe the records and say nothing about what caused a skill.",
    ],
  };
}

function figures({ settings }: TableContext, { after, by, metAtFirstCheck }: DaysSince): TableValue[] {
  const estimate = estimateAgeWhenMet({
    after: Float64Array.from(after),
    by: Float64Array.from(by),
    shares: SHARES,
    level: settings.level,
    replicates: BOOTSTRAP_REPLICATES,
    seed: settings.seed,
  });
  const weeks = (days: number | null | undefined) => (typeof days === "number" ? days / DAYS_PER_WEEK : null);
  const [p25, p50, p75] = estimate.percentiles;
  return [
    after.length,
    metAtFirstCheck,
    by.filter(Number.isFinite).length,
    weeks(p25?.age),
    weeks(p50?.age),
    weeks(p50?.lower),
    weeks(p50?.upper),
    weeks(p75?.age),
    estimate.method,
    estimate.reason,
  ];
}

function daysSince({ cohort, attainment, asOf }: TableContext, skill: number): DaysSince {
  const days: DaysSince = { after: [], by: [], metAtFirstCheck: 0 };
  cohort.ids.forEach((_, child) => {
    const cell = child * attainment.skillCount + skill;
    const enrolled = cohort.following.firstDayUpTo(child, asOf);
    const between = metBetween(attainment, cell, cohort.clocks[child] as AgeClock);
    if (enrolled === null || !between || (between.by !== null && between.by <= enrolled)) return;
    const without = attainment.withoutDay[cell] as number;
    // a day known exactly says by itself that the skill was not there before
    if (without !== NO_DAY ? without >= enrolled : attainment.exact[cell] === 1) {
      days.after.push(Math.max(0, between.after - enrolled));
      days.by.push(between.by === null ? Infinity : between.by - enrolled);
    } else if (without === NO_DAY) days.metAtFirstCheck += 1;
  });
  return days;
}
