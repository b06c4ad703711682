import { GROUP, type SheetKind, type WordMeaning } from "../../src/records/corrections/settled";
import {
  type AreaTaken,
  type ContentKind,
  contentShown,
  type HeadingSeen,
  type NameTaken,
  type SheetTaken,
  type ShortYears,
  type SkillTaken,
  type WordTaken,
} from "../../src/records/understanding/understanding";
import { counted, listed, plural } from "../../src/words/numbers";

export const SHEET_KIND_WORDS: Readonly<Record<SheetKind, string>> = {
  children: "Children",
  observations: "Checks, one row each",
  grid: "Checks, a grid",
  skills: "Skills",
  referrals: "Referrals",
  signs: "Signs",
  ratings: "Ratings",
  "not used": "Not used",
};

export const WORD_WORDS: Readonly<Record<WordMeaning, string>> = {
  met: "Met",
  emerging: "Emerging",
  "not met": "Not yet met",
  lost: "Lost",
  "leave out": "Leave out",
};

/** `Checks, a grid · 61 rows · 14 of 16 headings read`. */
export function sheetInShort({ is, rows, headings }: SheetTaken): string {
  if (is === "not used") return SHEET_KIND_WORDS[is];
  const named = headings.filter(({ cell }) => cell !== "");
  const read = named.filter(isRead).length;
  return `${SHEET_KIND_WORDS[is]} · ${plural(rows, "row", "rows")} · ${read} of ${plural(named.length, "heading", "headings")} read`;
}

export function isRead({ means, skill }: HeadingSeen): boolean {
  return means !== null || skill !== null;
}

export const DAY_OF_CHECKS_ABOUT = "No column says when these checks were made. Give the day here.";

const CONTENT_WORDS: Readonly<Record<ContentKind, string>> = {
  dates: "dates",
  numbers: "numbers",
  scores: "scores",
  results: "results",
  "yes or no": "yes or no",
  "few words": "a few words that repeat",
  "ids or names": "ids or names",
  text: "text",
  nothing: "nothing",
};

/** `C3: dates, 58 cells`. */
export function contentInWords(seen: HeadingSeen): string {
  const { cell, cells } = seen;
  const place = cell === "" ? "" : `${cell}: `;
  return cells === 0
    ? `${place}no cell is filled`
    : `${place}${CONTENT_WORDS[contentShown(seen)]}, ${plural(cells, "cell", "cells")}`;
}

/** What a heading is taken for, as the menu says it. */
export function meaningInWords(means: string | null): string {
  if (means === null) return "Not used";
  return means === GROUP ? "A group to report by" : means;
}

export function wordLabel({ word, cells }: Pick<WordTaken, "word" | "cells">): string {
  const where = plural(cells, "cell", "cells");
  return word === "" ? `A blank among the marks, ${where}` : `“${word}”, ${where}`;
}

export function areaWordLabel({ word, cells }: AreaTaken): string {
  return `“${word}”, ${plural(cells, "referral", "referrals")}`;
}

export function nameLabel({ column, spelling, cells }: NameTaken): string {
  return `“${spelling}” in ${column}, ${plural(cells, "row", "rows")}`;
}

/** Skills by the area they have now, the largest group first. */
export function skillsByArea(
  skills: readonly SkillTaken[],
): { readonly area: string; readonly skills: readonly SkillTaken[] }[] {
  const areas = [...new Set(skills.map(({ area }) => area))];
  return areas
    .map((area) => ({ area, skills: skills.filter((each) => each.area === area) }))
    .sort((a, b) => b.skills.length - a.skills.length);
}

export function areaLabel(area: string, count: number): string {
  const skills = plural(count, "skill", "skills");
  return area === "" ? `${skills} without an area` : `${skills} under “${area}”`;
}

export const SHEETS_ABOUT =
  "Each sheet and each heading, as this workbook is read. Change what is wrong with the menus, then confirm once. It is kept for the next quarter.";

export const WORDS_ABOUT = "These words are among the results. Say once what each means.";

export function resultsNotShownInWords(cells: number): string {
  const results = plural(cells, "result is", "results are");
  return `${results} another text that is not shown here: it is there once, or looks like a name or a note. “To fix” below lists each cell.`;
}

export function shortYearsInWords({ cells, headings }: ShortYears): string {
  const dates = plural(cells, "date has a year", "dates have years");
  return `${dates} of two digits, under ${listed(headings)}.`;
}

export const SHORT_YEAR_CHOICES: readonly { readonly value: ShortYears["means"]; readonly label: string }[] = [
  { value: "2000 to 2099", label: "Read 24 as 2024" },
  { value: "leave out", label: "Leave these dates out" },
];

export const AREA_WORDS_ABOUT =
  "Referrals name these areas in everyday words. Say once which area each means. A referral with an area that is not known counts nowhere.";

export const NAMES_ABOUT = "These may be two spellings of one name. Join them, or keep them apart.";

export const SAME_CHILD_ABOUT =
  "These rows may be one child entered twice. Check both cells first. Twins have the same dates.";

export const SKILLS_ABOUT =
  "No sheet lists the skills, so the list is made from the headings of the grids. Choose an area for them. Expected windows stay blank until you give them in the file of corrections: figures that need none are made without them.";

export function moreSameChild(count: number): string {
  return `Show more: ${counted(count)} not shown yet`;
}
