import { type AgeClock, ageMonthsOn } from "../age/correction";
import { type Day, isoOf } from "../age/day";
import { BOX, BOX_LABELS, boxOn } from "../cohort/boxes";
import { type MetBetween, metBetween } from "../cohort/interval";
import { STATE_LABELS } from "../cohort/state";
import { timingOf, windowStatus } from "../cohort/window";
import { NO_DAY, type Skill } from "../records/records";
import { type TableContext, groupOfFollowed } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "child", label: "Child", unit: "text" },
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "ageMonths", label: "Age", unit: "months" },
  { key: "window", label: "Window", unit: "text" },
  { key: "state", label: "State", unit: "text" },
  { key: "box", label: "Box", unit: "text" },
  { key: "timing", label: "Timing", unit: "text" },
  { key: "metAfter", label: "Met after", unit: "date" },
  { key: "metBy", label: "Met by", unit: "date" },
  { key: "lastLook", label: "Last checked", unit: "date" },
  { key: "reason", label: "Reason", unit: "text" },
];

/** One row a child followed on the as-of date and skill: internal, since each stands for one child. */
export function skillStatus(context: TableContext): Table<"skill-status"> {
  const groupOf = groupOfFollowed(context);
  const followed = context.cohort.ids.map((_, child) => child).filter((child) => (groupOf[child] as number) >= 0);
  return {
    id: "skill-status",
    title: "Each child and each skill (internal)",
    population: "Children in the program on the as-of date",
    columns: COLUMNS,
    rows: followed.flatMap((child) =>
      context.cohort.skills.map((skill, index) => statusRow(context, child, skill, index)),
    ),
    notes: [
      "Window compares the child's age with the skill's window on the as-of date. By itself it says nothing about the child's development. Talk with the child's clinician about anything that gives cause for concern.",
      "Timing is given for skills that are met: early, in window, late, or not known where the checks before and after are on both sides of an edge.",
      'Reason "correction stopped": window or timing differs from what corrected age would give, only because the rule for correcting age has stopped.',
    ],
    internal: true,
  };
}

function statusRow(context: TableContext, child: number, skill: Skill, index: number): TableValue[] {
  const { cohort, attainment, asOf, settings } = context;
  const clock = cohort.clocks[child] as AgeClock;
  const cell = child * attainment.skillCount + index;
  const box = boxOn(cohort, attainment, child, index, asOf, settings.recheckDays);
  const between = metBetween(attainment, cell, clock);
  const seen = between !== null && between.by !== null;
  const timed = box === BOX.hadAtFirstLook || box === BOX.gained ? between : null;
  const { window, timing } = standing(clock, asOf, timed, skill);
  return [
    cohort.ids[child] as string,
    skill.id,
    skill.area,
    ageMonthsOn(clock, asOf, skill.ageBasis),
    window,
    STATE_LABELS[attainment.state[cell] as number] as string,
    BOX_LABELS[box] as string,
    timing,
    seen ? isoOf(between.after) : null,
    seen ? isoOf(between.by as number) : null,
    attainment.lastLook[cell] === NO_DAY ? null : isoOf(attainment.lastLook[cell] as number),
    correctionStopped(clock, asOf, timed, skill) ? "correction stopped" : null,
  ];
}

/** @param between - the looks before and after the skill was met; null where timing is not asked for */
function standing(clock: AgeClock, asOf: Day, between: MetBetween | null, skill: Skill) {
  const ageOn = (day: Day) => ageMonthsOn(clock, day, skill.ageBasis);
  return {
    window: windowStatus(ageOn(asOf), skill),
    timing: between === null || between.by === null ? null : timingOf(ageOn(between.after), ageOn(between.by), skill),
  };
}

/** True where window or timing would differ had correction gone on. */
function correctionStopped(clock: AgeClock, asOf: Day, between: MetBetween | null, skill: Skill): boolean {
  const neverCorrected = skill.ageBasis === "chronological" || clock.correctedBirth === clock.birth;
  if (neverCorrected || asOf < clock.stops) return false;
  const now = standing(clock, asOf, between, skill);
  const corrected = standing({ ...clock, stops: Infinity }, asOf, between, skill);
  return now.window !== corrected.window || now.timing !== corrected.timing;
}
