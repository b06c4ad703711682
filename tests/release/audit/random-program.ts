import { gridOf } from "../../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../../src/workbook/workbook";
import { addDays } from "../../oracle/calendar";

/** Numbers from 0 (in) to 1 (out), the same for the same seed (mulberry32, common practice, no source). */
export function chanceOf(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A random program in rows, as a person would type them: few skills, many children, everything of 2026 and before. */
export interface RandomProgram {
  readonly children: readonly ChildRow[];
  readonly observations: readonly (readonly [child: string, skill: string, date: string, result: string])[];
  readonly referrals: readonly (readonly [child: string, referred: string, area: string, from: string])[];
  readonly skills: readonly SkillRow[];
}

interface ChildRow {
  readonly id: string;
  readonly birth: string;
  readonly site: string;
  readonly therapist: string;
  readonly enrolled: string;
  readonly left: string | null;
  readonly family: string;
}

export interface SkillRow {
  readonly id: string;
  readonly area: string;
  readonly basis: "corrected" | "chronological";
  /** Months. */
  readonly usual: number;
}

export const LAST_DAY = "2026-12-31";

const SKILLS: readonly SkillRow[] = [
  { id: "sits", area: "gross motor", basis: "corrected", usual: 7 },
  { id: "says two words", area: "speech", basis: "chronological", usual: 15 },
  { id: "stands", area: "gross motor", basis: "corrected", usual: 11 },
  { id: "points", area: "speech", basis: "corrected", usual: 12 },
];
const AREAS = ["gross motor", "speech"];
const SOURCES = ["clinic", "family", "childcare"];

export interface ProgramOptions {
  /** Every child has a twin with the same records, in a family of their own. */
  readonly twins?: boolean;
  readonly mostSkills?: number;
  readonly mostChildren?: number;
}

export function randomProgram(seed: number, options: ProgramOptions = {}): RandomProgram {
  const { twins = false, mostSkills = 4, mostChildren = 200 } = options;
  const chance = chanceOf(seed);
  const upTo = (most: number) => Math.floor(chance() * most);
  const size = 40 + upTo(mostChildren - 40);
  const siteCount = 2 + upTo(3);
  const skills = SKILLS.slice(0, 2 + upTo(mostSkills - 1));
  const children: ChildRow[] = [];
  const observations: [string, string, string, string][] = [];
  const referrals: [string, string, string, string][] = [];
  for (let number = 0; number < size; number += 1) {
    const id = `C${number}`;
    const enrolled = addDays(LAST_DAY, -upTo(800));
    const birth = addDays(enrolled, -upTo(500));
    const site = Math.floor(siteCount * chance() ** 1.6);
    const stay = chance() < 0.25 ? upTo(400) : null;
    const left = stay === null || addDays(enrolled, stay) > LAST_DAY ? null : addDays(enrolled, stay);
    const end = left ?? LAST_DAY;
    const therapist = `T${(chance() < 0.9 ? site : upTo(siteCount)) * 2 + upTo(2)}`;
    const own: ChildRow = { id, birth, site: `Site ${"ABCD"[site]}`, therapist, enrolled, left, family: "" };
    const sibling = !twins && chance() < 0.15 && number > 0;
    if (sibling)
      children[number - 1] = { ...children[number - 1]!, family: children[number - 1]!.family || `F${number}` };
    children.push({ ...own, family: twins ? `F${number}` : sibling ? children[number - 1]!.family : "" });
    const days = daysBetween(enrolled, end);
    for (const skill of skills) {
      const able = addDays(birth, Math.round((skill.usual + 5 * (chance() - 0.5)) * 30.4));
      const looks = Array.from({ length: upTo(4) }, () => addDays(enrolled, upTo(days + 1)));
      for (const day of new Set(looks)) {
        const isLost = day >= able && chance() < 0.04;
        observations.push([
          id,
          skill.id,
          day,
          isLost ? "lost" : day >= able ? "met" : chance() < 0.2 ? "emerging" : "not met",
        ]);
      }
    }
    for (let times = chance() < 0.5 ? 1 + upTo(2) : 0; times > 0; times -= 1) {
      const areas = chance() < 0.2 ? AREAS.join("; ") : AREAS[upTo(2)]!;
      const from = SOURCES[Math.floor(3 * chance() ** 2)]!;
      referrals.push([id, addDays(end, -upTo(Math.min(days, 364) + 1)), areas, from]);
    }
  }
  const program = { children, observations, referrals, skills };
  return twins ? doubled(program) : program;
}

/** The same program after a child was entered late at one place and one look was taken back. */
export function changed(program: RandomProgram, seed: number): RandomProgram {
  const at = Math.floor(chanceOf(seed + 77)() * program.children.length);
  const like = program.children[at]!;
  const late = { ...like, id: "late", family: "" };
  const looks = program.observations
    .filter(([child]) => child === like.id)
    .map(([, ...rest]) => ["late", ...rest] as const);
  return {
    ...program,
    children: [...program.children, late],
    observations: [...program.observations.slice(1), ...looks],
  };
}

function doubled({ children, observations, referrals, skills }: RandomProgram): RandomProgram {
  const again = (id: string) => `${id} twin`;
  return {
    children: [...children, ...children.map((child) => ({ ...child, id: again(child.id) }))],
    observations: [...observations, ...observations.map(([id, ...rest]) => [again(id), ...rest] as const)],
    referrals: [...referrals, ...referrals.map(([id, ...rest]) => [again(id), ...rest] as const)],
    skills,
  };
}

export function workbookOf({ children, observations, referrals, skills }: RandomProgram): WorkbookIn {
  const childRows = children.map(({ id, birth, site, therapist, enrolled, left, family }) => [
    ...[id, birth, "40+0", site, therapist, enrolled, left, family === "" ? null : family],
  ]);
  const skillRows = skills.map(({ id, area, basis, usual }) => [id, id, area, usual - 3, usual + 3, basis, 0.99]);
  return {
    dateSystem: 1900,
    sheets: [
      sheetOf(
        "Children",
        ["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left", "Family"],
        childRows,
      ),
      sheetOf("Observations", ["Child", "Skill", "Date", "Result"], observations),
      sheetOf("Skills", ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share"], skillRows),
      sheetOf("Referrals", ["Child", "Referred", "Area", "From"], referrals),
    ],
  };
}

function sheetOf(name: string, headings: readonly string[], rows: readonly (readonly unknown[])[]): SheetIn {
  const range = { top: 0, left: 0, bottom: rows.length, right: headings.length - 1 };
  return {
    name,
    grid: gridOf([headings, ...rows]),
    tables: [{ name, range, headerRow: true, totalsRow: false }],
    merged: [],
  };
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
