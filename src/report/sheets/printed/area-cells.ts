import type { Skill } from "../../../records/records";
import type { Table } from "../../../tables/table";
import type { CellOut, CellStyle, ShadeStep } from "../../../workbook/sheets";
import { type Row, readTable } from "../read-table";

/** Below this a cell is not shaded: one child more or less would change its shade. */
export const LEAST_SHADED = 5;
/** Where a darker shade begins: a half, three quarters, nine in ten. */
const STEPS = [0.5, 0.75, 0.9] as const;

/** A skill over the age groups, all groups of children added up. */
export interface SkillLine {
  readonly skill: Skill;
  readonly bands: readonly BandCount[];
  readonly children: number;
  readonly upToDate: number;
  readonly needsRecheck: number;
  readonly notChecked: number;
}

export interface BandCount {
  readonly band: string;
  readonly children: number;
  readonly met: number;
  readonly upToDate: number;
}

/** The skills of an area as lines, in the order of Skills. */
export function skillLines(table: Table, skills: readonly Skill[], bands: readonly string[]): SkillLine[] {
  const read = readTable(table);
  const bySkill = new Map<string, Row[]>();
  for (const row of table.rows) {
    const id = read.text(row, "skill");
    bySkill.set(id, [...(bySkill.get(id) ?? []), row]);
  }
  return skills.flatMap((skill) => {
    const rows = bySkill.get(skill.id);
    if (!rows) return [];
    return [
      {
        skill,
        bands: bands.map((band) => {
          const own = rows.filter((row) => read.text(row, "band") === band);
          return {
            band,
            children: read.sum(own, "children"),
            met: read.sum(own, "met"),
            upToDate: read.sum(own, "assessed"),
          };
        }),
        children: read.sum(rows, "children"),
        upToDate: read.sum(rows, "assessed"),
        needsRecheck: read.sum(rows, "outOfDate"),
        notChecked: read.sum(rows, "notAssessed"),
      },
    ];
  });
}

/** `9 of 11`, shaded by the share met; bold where the age group is wholly past the skill's window. */
export function bandCell({ met, upToDate, children }: BandCount, isPast: boolean): CellOut {
  if (children === 0) return { value: null, style: "step0" };
  if (upToDate === 0) return { value: "–", style: "step0" };
  const step = upToDate < LEAST_SHADED ? 0 : stepOf(met / upToDate);
  const style: CellStyle = isPast ? `step${step}Past` : `step${step}`;
  return { value: `${met} of ${upToDate}`, style };
}

export function stepOf(share: number): ShadeStep {
  return STEPS.filter((from) => share >= from).length as ShadeStep;
}

/** True where the whole age group is at or past the close; the youngest age of a group is in its name. */
export function isBandPast(band: string, { closesMonths }: Skill): boolean {
  const from = /^(\d+(?:\.\d+)?)/.exec(band)?.[1];
  return from !== undefined && closesMonths !== null && Number(from) >= closesMonths;
}
