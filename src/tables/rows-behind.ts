import { type AgeClock, ageMonthsOn } from "../age/correction";
import { buildCohort } from "../cohort/cohort";
import { windowStatus } from "../cohort/window";
import type { Records, Skill } from "../records/records";
import type { Settings } from "../settings/settings";
import { columnLetters } from "../workbook/cells";
import { groupOfEverFollowed, groupOfFollowed, type TableContext, tableContext } from "./context";
import type { Figure } from "./definition-check/figure";

/** The rows of Observations that a figure is made of: internal, since each is of one child. */
export interface RowsBehind {
  readonly children: number;
  /** The cell of each result, in the order of the sheet. */
  readonly cells: readonly { readonly sheet: string; readonly cell: string }[];
}

/**
 * The rows behind a figure of expected-by-now or age-when-met: every check, up to the day, of the skills it counts, of the
 * children it counts. Checks of a skill that replaces another one are behind the other's figure too.
 */
export function rowsBehind(records: Records, settings: Settings, figure: Figure): RowsBehind {
  const context = tableContext(buildCohort(records, settings), settings, records);
  const counts = figure.table === "age-when-met" ? everInGroup(context, figure) : pastWindow(context);
  const { skills } = context.cohort;
  const own = [...skills.keys()].filter((at) => isOf(figure, skills[at] as Skill));
  const roots = skills.map((_, at) => own.filter((skill) => at === skill || replaces(skills, at, skill)));
  const { child, skill, day, places } = records.observations;
  const rows = [...child.keys()].filter(
    (row) =>
      (day[row] as number) <= context.asOf && roots[skill[row] as number]!.some((root) => counts(child[row]!, root)),
  );
  return {
    children: new Set(rows.map((row) => child[row])).size,
    cells: places
      ? rows.map((row) => ({
          sheet: places.sheets[places.sheet[row] as number] as string,
          cell: `${columnLetters(places.column[row] as number)}${(places.row[row] as number) + 1}`,
        }))
      : [],
  };
}

function isOf({ skill, area, kind }: Figure, each: Skill): boolean {
  if (skill !== "all") return each.id === skill;
  return each.area === area && (each.expectedShare === null ? "none" : String(each.expectedShare)) === kind;
}

/** Whether a skill replaces another one, directly or through others. */
function replaces(skills: readonly Skill[], later: number, skill: number): boolean {
  const seen = new Set<number>();
  for (let at = skills[later]?.follows ?? null; at !== null && !seen.has(at); at = skills[at]?.follows ?? null) {
    if (at === skill) return true;
    seen.add(at);
  }
  return false;
}

type Counts = (child: number, skill: number) => boolean;

function everInGroup(context: TableContext, { groups }: Figure): Counts {
  const groupOf = groupOfEverFollowed(context);
  const group = context.groups.values.findIndex((values) => values.every((value, at) => value === groups[at]));
  return (child) => groupOf[child] === group;
}

function pastWindow(context: TableContext): Counts {
  const { cohort, asOf } = context;
  const groupOf = groupOfFollowed(context);
  return (child, skill) => {
    if ((groupOf[child] as number) < 0) return false;
    const { ageBasis, ...window } = cohort.skills[skill] as Skill;
    const age = ageMonthsOn(cohort.clocks[child] as AgeClock, asOf, ageBasis);
    return windowStatus(age, window) === "past window";
  };
}
