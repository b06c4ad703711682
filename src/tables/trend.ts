import { shareInterval } from "../statistics/share";
import type { TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";
import { lateEntries } from "./trend-late";
import { correctionStops, countQuarter, lastQuarters, type Quarter, type SkillCounts } from "./trend-quarters";
import { siteNotes } from "./trend-sites";

const COLUMNS: readonly TableColumn[] = [
  { key: "quarter", label: "Quarter", unit: "text" },
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "met", label: "Met", unit: "children" },
  { key: "assessed", label: "Up-to-date checks", unit: "children" },
  { key: "shareMet", label: "Share met", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
  { key: "provisional", label: "Provisional", unit: "text" },
];

const NOTES: readonly string[] = [
  "Each quarter shows the children in the program on its last day (the last quarter: on the as-of date), over all ages, with the checks up to that day. A child counts in every quarter in which it is in the program, so quarters next to each other share most children.",
  "All quarters are counted with the skills and settings of this run, so that no change of definition can look like a trend. Where a program changed a definition itself, only an earlier report shows it.",
  "A share also moves with the ages of the children in the program. Met does not depend on correction: no share jumps where correcting stops.",
];

/** Table 8: the share of children with each skill at the end of the last eight quarters (METHOD.md, section 6). */
export function trend(context: TableContext): Table<"trend"> {
  const { cohort, settings, groups } = context;
  const quarters = lastQuarters(context.asOf);
  const late = lateEntries(context, quarters);
  const counts = quarters.map((quarter) =>
    countQuarter(cohort, quarter, groups.ofEnrolment, groups.values.length, settings.recheckDays),
  );
  const rows = groups.values.flatMap((values, group) =>
    quarters.flatMap((quarter, at) =>
      cohort.skills.flatMap(({ id, area }, skill): TableValue[][] => {
        const cell = counts[at]![group * cohort.skills.length + skill] as SkillCounts;
        if (cell.children === 0) return [];
        const provisional = at === quarters.length - 1 ? late.provisional : false;
        return [[...values, quarter.label, id, area, ...figures(cell, settings.level), provisional]];
      }),
    ),
  );
  return {
    id: "trend",
    title: "Children who have met each skill, quarter by quarter",
    population:
      "Children in the program on the last day of each of the last eight quarters; for the last one, on the as-of date",
    columns: [...groups.columns, ...COLUMNS],
    rows,
    notes: [late.note, ...NOTES, ...correctionNote(context, quarters), ...siteNotes(context, quarters)],
  };
}

function figures({ children, met, assessed }: SkillCounts, level: number): TableValue[] {
  const { share, lower, upper } = shareInterval(met, assessed, level, "wilson");
  return [children, met, assessed, share, lower, upper];
}

/** In which quarters correcting stopped for children followed at their end: no trend is drawn through it. */
function correctionNote(context: TableContext, quarters: readonly Quarter[]): string[] {
  const stops = correctionStops(context, quarters).flatMap((children, at) =>
    children === 0 ? [] : [`${quarters[at]!.label} ${children}`],
  );
  if (stops.length === 0) return [];
  return [
    `Correcting of age stopped within the quarter for this many children in the program at its end: ${stops.join(", ")}. Their age jumps there, and with it their age group and window.`,
  ];
}
