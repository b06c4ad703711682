import { ageMonthsOn } from "../age/correction";
import { bandIndex, bandLabel } from "../age/bands";
import type { Day } from "../age/day";
import { attain } from "../cohort/attainment";
import { BOX, BOX_COUNT, boxOn } from "../cohort/boxes";
import type { Attainment } from "../cohort/state";
import { NO_DAY } from "../records/records";
import { shareInterval } from "../statistics/share";
import { type TableContext, groupOfFollowed } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "band", label: "Age group", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "hadAtFirstLook", label: "Already met at first check", unit: "children" },
  { key: "gained", label: "Met since", unit: "children" },
  { key: "notMet", label: "Not met", unit: "children" },
  { key: "outOfDate", label: "Needs a recheck", unit: "children" },
  { key: "lost", label: "Lost", unit: "children" },
  { key: "notAssessed", label: "Not checked", unit: "children" },
  { key: "assessed", label: "Up-to-date checks", unit: "children" },
  { key: "met", label: "Met", unit: "children" },
  { key: "shareMet", label: "Share met", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
  { key: "lowest", label: "Lowest possible share", unit: "share" },
  { key: "highest", label: "Highest possible share", unit: "share" },
];

/** Children counted by group, skill, band and box. */
interface BandCounts {
  readonly boxes: Uint32Array;
  readonly bandCount: number;
  readonly skillCount: number;
}

/** Whom a table counts: the group of each child, -1 where it is not counted, and the day on which it is looked at. */
export interface Counted {
  readonly groupOf: Int32Array;
  readonly dayOf: Int32Array;
}

/** Table 1: children followed on the as-of date, by skill and by the band of their age that day (METHOD.md, section 6). */
export function metByBand(context: TableContext): Table<"met-by-band"> {
  const counts = countBoxes(context, context.attainment, followed(context));
  return {
    id: "met-by-band",
    title: "Children who have met each skill, by age group",
    population: "Children in the program on the as-of date",
    columns: [...context.groups.columns, ...COLUMNS],
    rows: rowsOf(context, counts),
    notes: NOTES,
  };
}

/** The same for children who left in the period and did not come back, as they stood on their last day. */
export function metByBandLeft(context: TableContext): Table<"met-by-band-left"> {
  const left = leftInPeriod(context);
  const counts = countBoxes(context, attain(context.cohort, left.dayOf), left);
  return {
    id: "met-by-band-left",
    title: "Children who left in the period: skills met by their last day, by age group",
    population: "Children who left in the period and did not come back by the as-of date, on their last day",
    columns: [...context.groups.columns, ...COLUMNS],
    rows: rowsOf(context, counts),
    notes: NOTES,
  };
}

/** Children followed on the as-of date. */
export function followed(context: TableContext): Counted {
  const groupOf = groupOfFollowed(context);
  return { groupOf, dayOf: groupOf.map((group) => (group < 0 ? NO_DAY : context.asOf)) };
}

/** Children who left in the period and did not come back, on their last day. */
export function leftInPeriod({ cohort, groups, from, asOf }: TableContext): Counted {
  const dayOf = Int32Array.from(cohort.ids, (_, child) => cohort.following.lastDayIfLeft(child, from, asOf) ?? NO_DAY);
  const groupOf = dayOf.map((day, child) =>
    day === NO_DAY ? -1 : (groups.ofEnrolment[cohort.following.enrolmentOn(child, day)] as number),
  );
  return { groupOf, dayOf };
}

const NOTES: readonly string[] = [
  "Up-to-date checks are the children less those not checked and those who need a recheck. Met is already met at first check plus met since. Share met is met of up-to-date checks, with its Wilson interval.",
  "The lowest possible share counts every child who needs a recheck or was not checked as without the skill. The highest counts each as with it.",
  'Rows with skill "all" add up the skills of an area: they count skill checks, not children, and have no interval, because the skills of one child are not independent.',
  "Not yet met counts emerging too. A skill not met, and last checked longer ago than the recheck limit, needs a recheck.",
];

function countBoxes(context: TableContext, attainment: Attainment, { groupOf, dayOf }: Counted): BandCounts {
  const { cohort, groups, settings } = context;
  const bandCount = settings.edges.length + 1;
  const skillCount = cohort.skills.length;
  const boxes = new Uint32Array(Math.max(groups.values.length, 1) * skillCount * bandCount * BOX_COUNT);
  for (let child = 0; child < cohort.ids.length; child += 1) {
    const group = groupOf[child] as number;
    if (group < 0) continue;
    const day = dayOf[child] as number;
    const bandOf = bandsOn(context, child, day);
    for (let skill = 0; skill < skillCount; skill += 1) {
      const band = bandOf[cohort.skills[skill]?.ageBasis ?? "corrected"];
      const box = boxOn(cohort, attainment, child, skill, day, settings.recheckDays);
      boxes[((group * skillCount + skill) * bandCount + band) * BOX_COUNT + box]! += 1;
    }
  }
  return { boxes, bandCount, skillCount };
}

function bandsOn({ cohort, settings }: TableContext, child: number, day: Day) {
  const clock = cohort.clocks[child];
  if (!clock) throw new RangeError("metByBand: no such child");
  return {
    corrected: bandIndex(ageMonthsOn(clock, day, "corrected"), settings.edges),
    chronological: bandIndex(ageMonthsOn(clock, day, "chronological"), settings.edges),
  };
}

function rowsOf(context: TableContext, counts: BandCounts): TableValue[][] {
  return context.groups.values.flatMap((values, group) => [
    ...skillRows(context, counts, group).map((row) => [...values, ...row]),
    ...areaRows(context, counts, group).map((row) => [...values, ...row]),
  ]);
}

function skillRows({ cohort, settings }: TableContext, counts: BandCounts, group: number): TableValue[][] {
  return cohort.skills.flatMap((skill, index) =>
    bandsOf(counts).flatMap((band) => {
      const boxes = boxesAt(counts, group, index, band);
      const head = [skill.id, skill.area, bandLabel(band, settings.edges)];
      return sum(boxes) === 0 ? [] : [[...head, ...figures(boxes, settings.level)]];
    }),
  );
}

function areaRows({ cohort, settings }: TableContext, counts: BandCounts, group: number): TableValue[][] {
  const areas = [...new Set(cohort.skills.map((skill) => skill.area))];
  return areas.flatMap((area) =>
    bandsOf(counts).flatMap((band) => {
      const boxes = new Uint32Array(BOX_COUNT);
      cohort.skills.forEach((skill, index) => {
        if (skill.area === area) boxesAt(counts, group, index, band).forEach((n, box) => (boxes[box]! += n));
      });
      return sum(boxes) === 0 ? [] : [["all", area, bandLabel(band, settings.edges), ...figures(boxes, null)]];
    }),
  );
}

/** @param level - of the interval; null for child-skills, which carry none */
function figures(boxes: Uint32Array, level: number | null): TableValue[] {
  const children = sum(boxes);
  const met = (boxes[BOX.hadAtFirstLook] as number) + (boxes[BOX.gained] as number);
  const unknown = (boxes[BOX.outOfDate] as number) + (boxes[BOX.notAssessed] as number);
  const assessed = children - unknown;
  const interval = level === null || assessed === 0 ? null : shareInterval(met, assessed, level, "wilson");
  return [
    children,
    ...boxes,
    assessed,
    met,
    assessed === 0 ? null : met / assessed,
    interval?.lower ?? null,
    interval?.upper ?? null,
    met / children,
    (met + unknown) / children,
  ];
}

function boxesAt(counts: BandCounts, group: number, skill: number, band: number): Uint32Array {
  const start = ((group * counts.skillCount + skill) * counts.bandCount + band) * BOX_COUNT;
  return counts.boxes.subarray(start, start + BOX_COUNT);
}

function bandsOf(counts: BandCounts): number[] {
  return Array.from({ length: counts.bandCount }, (_, band) => band);
}

function sum(values: Uint32Array): number {
  return values.reduce((total, value) => total + value, 0);
}
