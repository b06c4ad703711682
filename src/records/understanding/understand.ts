import type { WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { headingKey, keyOf, wordKey } from "../cells/words";
import { isRepair, type SheetDecision, type SkillDecision } from "../corrections/decisions";
import { DecisionsInForce } from "../corrections/in-force";
import { fitDecisions } from "../headings/fit-decisions";
import { AREAS } from "../records";
import { areasMet } from "./area-words-met";
import { changesSince } from "./changes";
import { decisionsOf, type UnderstandingFile } from "./file";
import { missingColumns } from "./missing-columns";
import { nameVariants } from "./name-variants";
import { keysOfColumn, wordsMet } from "./result-words-met";
import { sameChildren } from "./same-child";
import { type TablesTaken, tablesTaken } from "./tables-taken";
import { shortYearsMet } from "./short-years";
import { takeSheets } from "./take-sheets";
import type { NameTaken, SheetTaken, SkillTaken, Understanding } from "./understanding";

/** A file that says nothing about this workbook: none of its sheets is laid out as the file says. */
export class OtherWorkbook extends RangeError {
  override readonly name = "OtherWorkbook";

  constructor() {
    super(
      "The understanding file is about another workbook: none of its sheets is here. Make one for this workbook, or name the right file.",
    );
  }
}

/**
 * How a workbook is understood, with what is doubtful marked.
 *
 * @param saved - what was settled before, for this workbook or an earlier one
 * @throws {OtherWorkbook} when no sheet of `saved` is laid out like one of this workbook
 */
export function understand(workbook: WorkbookIn, saved: UnderstandingFile | null = null): Understanding {
  const list = saved?.decisions ?? [];
  const before = new DecisionsInForce(list);
  const sheets = takeSheets(workbook, before);
  refuseOtherWorkbook(workbook, before.sheets);
  const rest = list.filter((each) => isRepair(each) && each.kind !== "two-digit-years");
  const base: Understanding = {
    sheets,
    words: [],
    resultsNotShown: 0,
    areas: [],
    shortYears: shortYearsMet(workbook, sheets, before.shortYearsMean),
    names: [],
    sameChild: [],
    missing: missingColumns(sheets),
    skills: [],
    changes: changesSince(before.sheets, sheets),
    decisions: rest,
    settings: saved?.settings ?? {},
  };
  const taken = tablesTaken(workbook, [...decisionsOf(base), ...before.skills]);
  const never = idsAndNames(taken);
  const { words, notShown } = wordsMet(workbook, taken.checks, (key) => before.word(key), never);
  return {
    ...base,
    words,
    resultsNotShown: notShown,
    areas: areasMet(taken.referrals, taken.area, (key) => before.area(key), never),
    names: namesTaken(taken, before),
    sameChild: sameChildren(taken.rows, (a, b) => before.child(a) === before.child(b)),
    skills: skillsTaken(sheets, taken, before.skills),
  };
}

/** @throws {OtherWorkbook} when sheets were settled, and none of those that are read is laid out like one of this workbook */
export function refuseOtherWorkbook(workbook: WorkbookIn, settled: readonly SheetDecision[]): void {
  const used = settled.filter(({ is }) => is !== "not used");
  const asked = used.length > 0 ? used : settled;
  if (asked.length > 0 && fitDecisions(workbook, asked).size === 0) throw new OtherWorkbook();
}

/** Ids, families, sites and therapists: never shown as a word. */
function idsAndNames({ children, checks, rows }: TablesTaken): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const block of [...children, ...checks]) {
    for (const column of ["child", "observer", "therapist", "site", "family"]) {
      for (const key of keysOfColumn(block.grid, block.columns.get(column), block.rows)) keys.add(key);
    }
  }
  for (const { value } of rows) for (const each of [value.therapist, value.site, value.family]) keys.add(wordKey(each));
  return keys;
}

function namesTaken({ rows }: TablesTaken, before: DecisionsInForce): NameTaken[] {
  return (["site", "therapist"] as const).flatMap((key) => {
    const column = key === "site" ? "Site" : "Therapist";
    const spellings = new Map<string, { text: string; cells: number }>();
    for (const { value } of rows) {
      const text = value[key];
      if (text === "") continue;
      const known = spellings.get(keyOf(text)) ?? { text, cells: 0 };
      spellings.set(keyOf(text), { ...known, cells: known.cells + 1 });
    }
    const counts = new Map([...spellings.values()].map(({ text, cells }) => [text, cells]));
    return nameVariants(column, counts, (spelling) => before.name(column, keyOf(spelling)));
  });
}

/** Where no table lists the skills, every heading of a grid that is one; the heading that spans several may name its area. */
function skillsTaken(
  sheets: readonly SheetTaken[],
  taken: TablesTaken,
  before: readonly SkillDecision[],
): SkillTaken[] {
  const { isSkillTableThere } = taken;
  const settled = new Map(before.map((each) => [keyOf(each.skill), each]));
  const made = new Map<string, SkillTaken>(before.map((each) => [keyOf(each.skill), skillOf(each)]));
  const headings = isSkillTableThere ? [] : [...sheets.flatMap((sheet) => sheet.headings), ...skillsListed(taken)];
  for (const { skill, above } of headings) {
    if (skill === null || made.has(keyOf(skill)) || settled.has(keyOf(skill))) continue;
    const area = areaNamed(above);
    made.set(keyOf(skill), { ...skillOf({ kind: "skill", skill, area }), doubtful: true });
  }
  return [...made.values()];
}

/** The skills that lists of checks name again and again, each many times less often than there are checks. */
function skillsListed(taken: TablesTaken): { readonly skill: string | null; readonly above: string }[] {
  const counts = new Map<string, { text: string; cells: number }>();
  let checks = 0;
  // All lists together: where each child has a sheet, none alone says a skill twice.
  for (const { grid, columns, rows } of taken.checks) {
    const at = columns.get("skill");
    if (at === undefined) continue;
    checks += rows.length;
    for (const row of rows) {
      const text = shownText(grid, row, at);
      const known = counts.get(keyOf(text)) ?? { text, cells: 0 };
      counts.set(keyOf(text), { ...known, cells: known.cells + 1 });
    }
  }
  if (counts.size > MOST_SKILLS || counts.size * LEAST_REPEATS > checks) return [];
  const never = idsAndNames(taken);
  const named = [...counts].filter(
    ([key, { text, cells }]) => key !== "" && cells > 1 && text.length <= LONGEST_SKILL && !never.has(wordKey(key)),
  );
  return named.map(([, { text }]) => ({ skill: text, above: "" }));
}

/** Checks per skill, at the least. */
const LEAST_REPEATS = 3;
const MOST_SKILLS = 300;
const LONGEST_SKILL = 80;

function skillOf(each: SkillDecision): SkillTaken {
  return {
    skill: each.skill,
    area: each.area ?? "",
    opens: each.opens ?? null,
    closes: each.closes ?? null,
    ageBasis: each.ageBasis ?? "corrected",
    expectedShare: each.expectedShare ?? null,
    basis: each.basis ?? "",
    doubtful: false,
  };
}

/** The area that a heading over several skills names: one of the six where it is one, else its own words. */
function areaNamed(above: string): string {
  const key = headingKey(above);
  if (key === "") return "";
  return AREAS.find((area) => headingKey(area) === key) ?? (above.length <= 30 ? above : "");
}
