import { gridOf } from "../../../src/workbook/grid-builder";
import type { SheetIn, WorkbookIn } from "../../../src/workbook/workbook";
import { addDays } from "../../oracle/calendar";
import { chanceOf } from "../audit/random-program";

/** The last day of the records of every invented program. */
export const LAST_DAY = "2026-12-31";

type Row = readonly (string | number | null)[];

/** An invented program as a person would type it: every table that a release can be made of. */
export interface Program {
  readonly children: readonly Row[];
  readonly observations: readonly Row[];
  readonly referrals: readonly Row[];
  readonly ratings: readonly Row[];
}

const SKILLS: readonly Row[] = [
  ["sits", "Sits", "gross motor", 4, 9, "corrected", 0.99],
  ["two words", "Two words", "speech", 10, 18, "chronological", 0.75],
  ["points", "Points", "speech", 8, 14, "corrected", 0.75],
];
const USUAL = [7, 15, 12];
const AREAS = ["gross motor", "speech"];
const SOURCES = ["clinic", "family", "childcare"];

/** One enrolment a child, no siblings: what an outsider may take for granted here holds. */
export function programOf(seed: number, size: number): Program {
  const chance = chanceOf(seed + 900);
  const upTo = (most: number) => Math.floor(chance() * most);
  const program = { children: [] as Row[], observations: [] as Row[], referrals: [] as Row[], ratings: [] as Row[] };
  const siteCount = 2 + upTo(2);
  for (let number = 0; number < size; number += 1) {
    const id = `C${number}`;
    const enrolled = addDays(LAST_DAY, -upTo(700));
    const birth = addDays(enrolled, -upTo(450));
    const end = addDays(enrolled, 30 + upTo(500));
    const left = chance() < 0.45 && end <= LAST_DAY ? end : null;
    const gestation = chance() < 0.25 ? `${26 + upTo(11)}+${upTo(7)}` : "40+0";
    const site = `Site ${"ABC"[Math.floor(siteCount * chance() ** 1.5)]}`;
    program.children.push([id, birth, gestation, site, chance() < 0.6 ? "English" : "Spanish", enrolled, left]);
    const last = left === null ? LAST_DAY : addDays(left, -1);
    const days = Math.round((Date.parse(last) - Date.parse(enrolled)) / 86_400_000);
    SKILLS.forEach(([skill], at) => {
      const able = addDays(birth, Math.round((USUAL[at]! + 6 * (chance() - 0.5)) * 30.4));
      const looks = new Set(Array.from({ length: upTo(5) }, () => addDays(enrolled, upTo(days + 1))));
      for (const day of looks) {
        const result = day < able ? (chance() < 0.2 ? "emerging" : "not met") : chance() < 0.05 ? "lost" : "met";
        program.observations.push([id, skill as string, day, result]);
      }
    });
    for (let times = chance() < 0.5 ? 1 + upTo(2) : 0; times > 0; times -= 1) {
      program.referrals.push(referral(id, addDays(enrolled, upTo(days + 1)), chance, upTo));
    }
    if (left !== null && chance() < 0.85) program.ratings.push(rating(id, enrolled, left, chance, upTo));
  }
  return program;
}

function referral(id: string, day: string, chance: () => number, upTo: (most: number) => number): Row {
  const areas = chance() < 0.2 ? AREAS.join("; ") : AREAS[upTo(2)]!;
  const after = (chanceOfIt: number, days: number, from: string | null) =>
    from !== null && chance() < chanceOfIt ? addDays(from, upTo(days)) : null;
  const evaluated = after(0.85, 50, day);
  const answer = evaluated === null || chance() < 0.1 ? null : chance() < 0.75 ? "yes" : "no";
  const plan = answer === "yes" ? after(0.85, 30, evaluated) : null;
  const reason = chance() < 0.5 ? (chance() < 0.5 ? "family" : "program") : null;
  const closed = plan === null && chance() < 0.3 ? addDays(day, upTo(80)) : null;
  const source = SOURCES[Math.floor(3 * chance() ** 2)]!;
  return [id, day, areas, source, evaluated, answer, plan, reason, closed];
}

function rating(id: string, from: string, to: string, chance: () => number, upTo: (most: number) => number): Row {
  const [entry, exit] = [1 + upTo(5), 1 + upTo(5)];
  return [id, "Positive relationships", from, entry, to, exit, chance() < 0.15 ? null : chance() < 0.7 ? "yes" : "no"];
}

export function bookOf({ children, observations, referrals, ratings }: Program): WorkbookIn {
  const sheets: readonly (readonly [name: string, headings: readonly string[], rows: readonly Row[]])[] = [
    ["Children", ["Child", "Birth date", "Gestation", "Site", "Language", "Enrolled", "Left"], children],
    ["Observations", ["Child", "Skill", "Date", "Result"], observations],
    ["Skills", ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share"], SKILLS],
    [
      "Referrals",
      ["Child", "Referred", "Area", "From", "Evaluated", "Eligible", "Plan", "Late reason", "Closed"],
      referrals,
    ],
    [
      "Ratings",
      ["Child", "Outcome", "Entry date", "Entry level", "Exit date", "Exit level", "Gained any skill"],
      ratings,
    ],
  ];
  return { dateSystem: 1900, sheets: sheets.map(([name, headings, rows]) => sheetOf(name, headings, rows)) };
}

function sheetOf(name: string, headings: readonly string[], rows: readonly Row[]): SheetIn {
  const range = { top: 0, left: 0, bottom: rows.length, right: headings.length - 1 };
  return {
    name,
    grid: gridOf([headings, ...rows]),
    tables: [{ name, range, headerRow: true, totalsRow: false }],
    merged: [],
  };
}
