import { a1 } from "../../workbook/cells";
import { fileOf, placeInWords } from "../../workbook/sources";
import type { SkillDecision } from "../corrections/decisions";
import type { Block, Tally } from "../headings/block";
import { ID_CODE, type KeyLookup } from "../cells/ids";
import type { Reading } from "../rows/reading";
import { AREAS, type Skill } from "../records";
import { readTableRows, type TableRow } from "../rows/table-rows";
import { type SkillRow, SKILLS, skillRow } from "../tables/skills";
import { displayOf, headingKey, keyOf } from "../cells/words";

/** The area of a skill for which nobody has chosen one yet. */
export const NO_AREA = "area not chosen";

export interface SkillTable {
  readonly skills: readonly Skill[];
  /** The cells of two files that say different things of one skill: no figure could say which of them it keeps to. */
  readonly differ: readonly [first: string, second: string] | null;
  /** The skill of an id or, where no id says so, of a label that only one skill has. */
  readonly lookup: KeyLookup;
  /** The area of a text, as it is written in Skills or among the six; null where it is neither. */
  readonly area: (text: string) => string | null;
}

interface Kept {
  /** null: of a skill that no table holds. */
  readonly block: Block | null;
  readonly row: number;
  readonly value: SkillRow;
}

/**
 * Reads the Skills table.
 *
 * @param made - skills that a person named in place of a table, or beside it; the table's own rows come first
 */
export function readSkills(
  reading: Reading,
  blocks: readonly { block: Block; tally: Tally }[],
  made: readonly SkillDecision[] = [],
): SkillTable {
  const kept = new Map<string, Kept>();
  const leftOut = new Set<string>();
  const differ: (readonly [first: string, second: string])[] = [];
  for (const { block, tally } of blocks) {
    for (const each of readTableRows(reading, block, SKILLS, skillRow, tally))
      keep(reading, block, tally, each, kept, leftOut, differ);
  }
  for (const each of made) {
    const key = keyOf(each.skill);
    if (!kept.has(key) && !leftOut.has(key)) kept.set(key, { block: null, row: -1, value: madeRow(each) });
  }
  const rows = [...kept.values()];
  const indexOf = new Map([...kept.keys()].map((key, index) => [key, index]));
  const follows = followed(reading, rows, indexOf);
  const areaOf = areaNames(rows);
  const skills = rows.map(({ value }, index) => skillOf(value, follows[index] ?? null, areaOf));
  return {
    skills,
    differ: differ[0] ?? null,
    lookup: lookupOf(reading, rows, indexOf, leftOut),
    area: (text) => areaOf.get(headingKey(text)) ?? null,
  };
}

/** What is not chosen yet stays open: no area is guessed, and no window. */
function madeRow(each: SkillDecision): SkillRow {
  return skillRow.parse({
    skill: displayOf(each.skill),
    label: each.label ?? "",
    area: each.area || NO_AREA,
    opens: each.opens ?? null,
    closes: each.closes ?? null,
    ageBasis: each.ageBasis ?? null,
    expectedShare: each.expectedShare ?? null,
    follows: null,
    tryTogether: "",
    basis: each.basis ?? "",
    sense: null,
  });
}

function keep(
  reading: Reading,
  block: Block,
  tally: Tally,
  { row, value, id }: TableRow<SkillRow>,
  kept: Map<string, Kept>,
  leftOut: Set<string>,
  differ: (readonly [first: string, second: string])[],
): void {
  const key = keyOf(id);
  if (value === null) {
    if (key !== "") leftOut.add(key);
    return;
  }
  const earlier = kept.get(key);
  if (!earlier) {
    kept.set(key, { block, row, value });
    return;
  }
  const isCopy = JSON.stringify({ ...earlier.value, skill: "" }) === JSON.stringify({ ...value, skill: "" });
  const rule = isCopy ? "exact-copy" : "skill-twice";
  const isElsewhere = earlier.block !== null && earlier.block.file !== block.file;
  tally.leave(rule);
  if (isCopy && isElsewhere) return reading.findings.copyElsewhere(block);
  if (isElsewhere) reading.findings.cell(rule, earlier.block, earlier.row, columnOf(earlier.block));
  reading.findings.cell(rule, block, row, columnOf(block));
  if (isElsewhere) differ.push([placeOf(earlier.block, earlier.row), placeOf(block, row)]);
}

function placeOf(block: Block, row: number): string {
  return placeInWords({ ...fileOf(block), sheet: block.sheetName }, a1(row, columnOf(block)));
}

function columnOf(block: Block): number {
  return block.columns.get("skill") as number;
}

function skillOf(row: SkillRow, follows: number | null, areaOf: ReadonlyMap<string, string>): Skill {
  return {
    id: row.skill,
    label: row.label === "" ? row.skill : row.label,
    area: areaOf.get(headingKey(row.area)) ?? row.area,
    opensMonths: row.opens,
    closesMonths: row.closes,
    ageBasis: row.ageBasis ?? "corrected",
    expectedShare: row.expectedShare,
    follows,
    tryTogether: row.tryTogether,
    sense: row.sense,
    basis: row.basis,
  };
}

/** One spelling an area: the six as they are named everywhere, any other as it is first written. */
function areaNames(rows: readonly Kept[]): Map<string, string> {
  const names = new Map<string, string>(AREAS.map((area) => [headingKey(area), area]));
  for (const { value } of rows) {
    const key = headingKey(value.area);
    if (!names.has(key)) names.set(key, displayOf(value.area));
  }
  return names;
}

/** The index of the skill that each skill follows, or null; circles are listed and cut. */
function followed(reading: Reading, rows: readonly Kept[], indexOf: ReadonlyMap<string, number>): (number | null)[] {
  const follows = rows.map(({ block, row, value }, index) => {
    if (value.follows === null) return null;
    const other = indexOf.get(reading.decided.skill(keyOf(value.follows))) ?? null;
    if (other !== null && other !== index) return other;
    const rule = other === index ? "follows-circle" : "follows-unknown";
    listFollows(reading, rule, block, row);
    return null;
  });
  const inCircle = follows.map((_, start) => leadsBack(follows, start));
  return follows.map((other, index) => {
    if (!inCircle[index]) return other;
    const { block, row } = rows[index] as Kept;
    listFollows(reading, "follows-circle", block, row);
    return null;
  });
}

function listFollows(reading: Reading, rule: string, block: Block | null, row: number): void {
  if (block) reading.findings.cell(rule, block, row, block.columns.get("follows") as number);
}

function leadsBack(follows: readonly (number | null)[], start: number): boolean {
  let at = follows[start] ?? null;
  for (let steps = 0; at !== null && steps <= follows.length; steps += 1) {
    if (at === start) return true;
    at = follows[at] ?? null;
  }
  return false;
}

function lookupOf(
  reading: Reading,
  rows: readonly Kept[],
  indexOf: ReadonlyMap<string, number>,
  leftOut: ReadonlySet<string>,
): KeyLookup {
  const byLabel = labelLookup(rows.map(({ value }) => value.label));
  return (written) => {
    const key = indexOf.has(written) ? written : reading.decided.skill(written);
    const index = indexOf.get(key);
    if (index !== undefined) return index;
    if (leftOut.has(key)) return ID_CODE.leftOut;
    return byLabel.get(key) ?? ID_CODE.unknown;
  };
}

/** By labels that only one skill has. */
function labelLookup(labels: readonly string[]): Map<string, number> {
  const byLabel = new Map<string, number>();
  labels.forEach((label, index) => {
    const key = keyOf(label);
    if (key !== "") byLabel.set(key, byLabel.has(key) ? ID_CODE.unknown : index);
  });
  return byLabel;
}

/** The skills of another workbook, as a table of skills that this one's observations are read with. */
export function skillsGiven(reading: Reading, skills: readonly Skill[]): SkillTable {
  const indexOf = new Map(skills.map(({ id }, index) => [keyOf(id), index]));
  const byLabel = labelLookup(skills.map(({ label }) => label));
  const areas = new Map([...AREAS, ...skills.map(({ area }) => area)].map((area) => [headingKey(area), area]));
  return {
    skills,
    differ: null,
    lookup: (written) => {
      const key = indexOf.has(written) ? written : reading.decided.skill(written);
      return indexOf.get(key) ?? byLabel.get(key) ?? ID_CODE.unknown;
    },
    area: (text) => areas.get(headingKey(text)) ?? null,
  };
}
