import { isoOf, dayOf } from "../../src/age/day";
import { randomFrom } from "../../src/statistics/random";
import { gridOf } from "../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../src/workbook/workbook";

export const RELEASE = { children: 2000, skills: 60, sites: 4, bands: 8 } as const;
/** Seven edges: eight bands. */
export const RELEASE_EDGES: readonly number[] = [3, 6, 9, 12, 18, 24, 36];

const LAST_DAY = dayOf(2026, 9, 30);
const LOOKS_A_SKILL = 2;
const DAYS_PER_MONTH = 30.4375;
const OLDEST_MONTHS = 42;

/** An invented program of that size: sites of unequal size, looks of which some are out of date, skills met at their age. */
export function releaseWorkbook(): WorkbookIn {
  const random = randomFrom(20240229);
  const children: unknown[][] = [];
  const looks: unknown[][] = [];
  for (let child = 0; child < RELEASE.children; child += 1) {
    const id = `C${child}`;
    const ageDays = 40 + random.nextInt(Math.round(OLDEST_MONTHS * DAYS_PER_MONTH) - 40);
    const birth = LAST_DAY - ageDays;
    const site = Math.min(random.nextInt(RELEASE.sites), random.nextInt(RELEASE.sites));
    children.push([id, isoOf(birth), `Site ${site + 1}`, isoOf(birth + 20), null]);
    for (let skill = 0; skill < RELEASE.skills; skill += 1) {
      const able = birth + Math.round((1 + skill * 0.6 + random.nextInt(6)) * DAYS_PER_MONTH);
      for (let look = 0; look < LOOKS_A_SKILL; look += 1) {
        if (random.nextInt(8) === 0) continue;
        const day = LAST_DAY - random.nextInt(Math.min(ageDays - 20, 200));
        looks.push([id, `S${skill + 1}`, isoOf(day), day >= able ? "met" : "not met"]);
      }
    }
  }
  const skills = Array.from({ length: RELEASE.skills }, (_, skill) => {
    const opens = Math.round(1 + skill * 0.6);
    return [`S${skill + 1}`, `Skill ${skill + 1}`, `Area ${1 + (skill % 6)}`, opens, opens + 5, "corrected"];
  });
  return {
    dateSystem: 1900,
    sheets: [
      sheetOf("Children", ["Child", "Birth date", "Site", "Enrolled", "Left"], children),
      sheetOf("Observations", ["Child", "Skill", "Date", "Result"], looks),
      sheetOf("Skills", ["Skill", "Label", "Area", "Opens", "Closes", "Age basis"], skills),
    ],
  };
}

function sheetOf(name: string, headings: readonly string[], rows: readonly (readonly unknown[])[]): SheetIn {
  const range = { top: 0, left: 0, bottom: rows.length, right: headings.length - 1 };
  const table = { name, range, headerRow: true, totalsRow: false };
  return { name, grid: gridOf([headings, ...rows]), tables: [table], merged: [] };
}
