import { type AgeClock, ageMonthsOn } from "../age/correction";
import { isoOf } from "../age/day";
import { decimalMonths } from "../age/months";
import { BOX, BOX_LABELS, boxOn } from "../cohort/boxes";
import { metBetween } from "../cohort/interval";
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
  { key: "lastLook", label: "Last look", unit: "date" },
  { key: "reason", label: "Reason", unit: "text" },
];

/** One row a child followed on the as-of date and skill: internal, since each stands for one child. */
export function skillStatus(context: TableContext): Table {
  const groupOf = groupOfFollowed(context);
  const followed = context.cohort.ids.map((_, child) => child).filter((child) => (groupOf[child] as number) >= 0);
  return {
    id: "skill-status",
    title: "Where each child stands with each skill (internal)",
    population: "Children followed on the as-of date",
    columns: COLUMNS,
    rows: followed.flatMap((child) =>
      context.cohort.skills.map((skill, index) => statusRow(context, child, skill, index)),
    ),
    notes: [
      "Window tells where the child's age stands against the skill's window on the as-of date; it says nothing about the child's development by itself. Talk with the child's clinician about anything that gives cause for concern.",
      "Timing is given for skills that are met: early, in window, late, or not known where the looks before and after stand on both sides of an edge.",
      'Reason "correction stopped": the window status differs from what corrected age would give, only because the rule for correcting age has stopped.',
    ],
    internal: true,
  };
}

function statusRow(context: TableContext, child: number, skill: Skill, index: number): TableValue[] {
  const { cohort, attainment, asOf, settings } = context;
  const clock = cohort.clocks[child] as AgeClock;
  const cell = child * attainment.skillCount + index;
  const ageMonths = ageMonthsOn(clock, asOf, skill.ageBasis);
  const box = boxOn(cohort, attainment, child, index, asOf, settings.recheckDays);
  const between = metBetween(attainment, cell, clock);
  const seen = between !== null && between.by !== null;
  const isMet = box === BOX.hadAtFirstLook || box === BOX.gained;
  return [
    cohort.ids[child] as string,
    skill.id,
    skill.area,
    ageMonths,
    windowStatus(ageMonths, skill),
    STATE_LABELS[attainment.state[cell] as number] as string,
    BOX_LABELS[box] as string,
    isMet ? timingAt(between as { after: number; by: number }, clock, skill) : null,
    seen ? isoOf(between.after) : null,
    seen ? isoOf(between.by as number) : null,
    attainment.lastLook[cell] === NO_DAY ? null : isoOf(attainment.lastLook[cell] as number),
    correctionStopped(clock, asOf, ageMonths, skill) ? "correction stopped" : null,
  ];
}

function timingAt(between: { readonly after: number; readonly by: number }, clock: AgeClock, skill: Skill) {
  const ageOn = (day: number) => ageMonthsOn(clock, day, skill.ageBasis);
  return timingOf(ageOn(between.after), ageOn(between.by), skill);
}

function correctionStopped(clock: AgeClock, asOf: number, ageMonths: number, skill: Skill): boolean {
  if (skill.ageBasis === "chronological" || clock.correctedBirth === clock.birth || asOf < clock.stops) return false;
  return windowStatus(decimalMonths(clock.correctedBirth, asOf), skill) !== windowStatus(ageMonths, skill);
}
