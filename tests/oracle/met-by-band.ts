import { ageMonths, bandOf, bandsInOrder } from "./ages";
import { BOXES, boxAt, type Box } from "./attainment";
import { groupsOf, type Entry, type Group } from "./groups";
import type { OracleInput, OracleRow, SkillRow } from "./input";

const Z_95 = 1.959963984540054;

type Boxes = Record<Box, number>;

/** METHOD.md, section 6, table 1, for children as they stood on the day of their entry. */
export function metByBand(input: OracleInput, entries: readonly Entry[]): OracleRow[] {
  return groupsOf(entries, input.settings.by).flatMap((group) => rowsOfGroup(input, group));
}

function rowsOfGroup(input: OracleInput, group: Group): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const skill of input.skills) {
    const bands = boxesByBand(input, group, [skill]);
    for (const band of bandsInOrder(input.settings.edges)) {
      const boxes = bands.get(band);
      if (boxes === undefined) continue;
      rows.push({ ...group.columns, skill: skill.skill, area: skill.area, band, ...figures(boxes, true) });
    }
  }
  for (const area of new Set(input.skills.map((skill) => skill.area))) {
    const skills = input.skills.filter((skill) => skill.area === area);
    const bands = boxesByBand(input, group, skills);
    for (const band of bandsInOrder(input.settings.edges)) {
      const boxes = bands.get(band);
      if (boxes === undefined) continue;
      rows.push({ ...group.columns, skill: "all", area, band, ...figures(boxes, false) });
    }
  }
  return rows;
}

function boxesByBand(input: OracleInput, group: Group, skills: readonly SkillRow[]): Map<string, Boxes> {
  const bands = new Map<string, Boxes>();
  for (const { person, day } of group.entries) {
    for (const skill of skills) {
      const band = bandOf(ageMonths(person, skill.ageBasis, input.settings, day), input.settings.edges);
      const boxes = bands.get(band) ?? (Object.fromEntries(BOXES.map((box) => [box, 0])) as Boxes);
      boxes[boxAt(input, person, skill, day)] += 1;
      bands.set(band, boxes);
    }
  }
  return bands;
}

function figures(boxes: Boxes, withInterval: boolean): OracleRow {
  const children = BOXES.reduce((sum, box) => sum + boxes[box], 0);
  const met = boxes["had at first look"] + boxes["gained here"];
  const unknown = boxes["out of date"] + boxes["not assessed"];
  const assessed = children - unknown;
  const [lower, upper] = withInterval && assessed > 0 ? wilson(met, assessed) : [null, null];
  return {
    children,
    hadAtFirstLook: boxes["had at first look"],
    gained: boxes["gained here"],
    notMet: boxes["not met"],
    outOfDate: boxes["out of date"],
    lost: boxes.lost,
    notAssessed: boxes["not assessed"],
    assessed,
    met,
    shareMet: assessed > 0 ? met / assessed : null,
    lower,
    upper,
    lowest: met / children,
    highest: (met + unknown) / children,
  };
}

/** Wilson (1927), J Am Stat Assoc 22:209-212, at 95%. */
export function wilson(count: number, of: number): [number, number] {
  const z2 = Z_95 * Z_95;
  const middle = (count + z2 / 2) / (of + z2);
  const half = (Z_95 / (of + z2)) * Math.sqrt((count * (of - count)) / of + z2 / 4);
  return [middle - half, middle + half];
}
