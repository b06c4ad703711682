import { type AgeClock, ageMonthsOn } from "../age/correction";
import { NO_DAY, type Skill } from "../records/records";
import { groupOfEverFollowed } from "./context";
import type { AgeEstimates } from "./estimates";
import type { Table, TableColumn, TableValue } from "./table";

export const REACHED_BY_AGE_COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "age", label: "Age", unit: "months" },
  { key: "children", label: "Children", unit: "children" },
  { key: "met", label: "Met by then", unit: "children" },
  { key: "notMet", label: "Not met by then", unit: "children" },
  { key: "notKnown", label: "Not known", unit: "children" },
  { key: "lowest", label: "Lowest possible share", unit: "share" },
  { key: "highest", label: "Highest possible share", unit: "share" },
  { key: "estimate", label: "Estimated share", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
];

export const REACHED_BY_AGE_TITLE = "Children who had met each skill by each age";
export const REACHED_BY_AGE_POPULATION = "Children ever in the program";

/** Of the counts; what is estimated has its own. */
export const REACHED_BY_AGE_NOTES: readonly string[] = [
  "Met by then: first seen with the skill at that age or younger. Not met by then: last seen without it at that age or older. Not known: neither, and children never checked for the skill.",
  "Lowest possible share takes every child not known as without the skill, highest possible share as with it.",
];

interface EdgeCounts {
  met: number;
  notMet: number;
}

/** Table 2: of all children ever followed, how many had met each skill by each band edge (METHOD.md, section 6). */
export function reachedByAge(estimates: AgeEstimates): Table<"reached-by-age"> {
  const { cohort, groups, settings } = estimates.context;
  const groupOf = groupOfEverFollowed(estimates.context);
  const rows = groups.values.flatMap((values, group) => {
    const children = cohort.ids.map((_, child) => child).filter((child) => groupOf[child] === group);
    if (children.length === 0) return [];
    return cohort.skills.flatMap((skill, index) =>
      edgeCounts(estimates, children, skill, index).map((counts, edge) => [
        ...values,
        skill.id,
        settings.edges[edge] as number,
        ...figures(children.length, counts),
        ...estimateAt(estimates, group, index, edge),
      ]),
    );
  });
  return {
    id: "reached-by-age",
    title: REACHED_BY_AGE_TITLE,
    population: REACHED_BY_AGE_POPULATION,
    columns: [...groups.columns, ...REACHED_BY_AGE_COLUMNS],
    rows,
    notes: [
      ...REACHED_BY_AGE_NOTES,
      "The estimated share comes from the same curve as age when met, read at the age in mean-length months (30.4375 days); its limits are approximate.",
    ],
  };
}

function edgeCounts(estimates: AgeEstimates, children: readonly number[], skill: Skill, index: number): EdgeCounts[] {
  const { attainment, settings } = estimates.context;
  const counts = settings.edges.map((): EdgeCounts => ({ met: 0, notMet: 0 }));
  for (const child of children) {
    const cell = child * attainment.skillCount + index;
    const ageOn = ageOfChild(estimates, child, skill);
    const metMonths = ageOn(attainment.metDay[cell] as number) ?? Infinity;
    const exactMonths = attainment.exact[cell] === 1 ? metMonths : null;
    const withoutMonths = exactMonths ?? ageOn(attainment.withoutDay[cell] as number) ?? -Infinity;
    settings.edges.forEach((edge, at) => {
      if (metMonths <= edge) counts[at]!.met += 1;
      else if (withoutMonths >= edge) counts[at]!.notMet += 1;
    });
  }
  return counts;
}

function ageOfChild(estimates: AgeEstimates, child: number, skill: Skill): (day: number) => number | null {
  const clock = estimates.context.cohort.clocks[child] as AgeClock;
  return (day) => (day === NO_DAY ? null : ageMonthsOn(clock, day, skill.ageBasis));
}

function figures(children: number, { met, notMet }: EdgeCounts): TableValue[] {
  const notKnown = children - met - notMet;
  return [children, met, notMet, notKnown, met / children, (met + notKnown) / children];
}

function estimateAt(estimates: AgeEstimates, group: number, skill: number, edge: number): TableValue[] {
  const at = estimates.estimateOf(group, skill).shareBy[edge];
  return at ? [at.share, at.lower, at.upper] : [null, null, null];
}
