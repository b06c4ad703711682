import {
  GROUP,
  LEAVE_OUT,
  SHEET_KINDS,
  type SheetKind,
  type ShortYearMeaning,
  WORD_MEANINGS,
  type WordMeaning,
} from "../corrections/settled";
import { headingKey } from "../cells/words";
import { AREAS } from "../records";
import type { Decision } from "../corrections/decisions";
import { guessHeadings } from "./guess-headings";
import { specOfKind } from "./kinds";
import type { HeadingSeen, SheetTaken, SkillTaken, Understanding } from "./understanding";

/** One act of a person. Everything that is not named stays as it is. */
export type Choice =
  | { readonly kind: "sheet"; readonly key: string; readonly is: SheetKind }
  | { readonly kind: "heading"; readonly key: string; readonly cell: string; readonly means: string | null }
  | { readonly kind: "skill heading"; readonly key: string; readonly cell: string; readonly skill: string }
  | { readonly kind: "word"; readonly word: string; readonly means: WordMeaning }
  | { readonly kind: "area word"; readonly word: string; readonly means: string }
  | { readonly kind: "two-digit years"; readonly means: ShortYearMeaning }
  /** `means` is the spelling itself where the two are to stay apart. */
  | { readonly kind: "name"; readonly column: string; readonly spelling: string; readonly means: string }
  /** The area of one skill, or of every skill whose area is `of`. */
  | { readonly kind: "area"; readonly skill: string; readonly area: string }
  | { readonly kind: "area of all"; readonly of: string; readonly area: string }
  /** A window that the person chose, with its source. */
  | {
      readonly kind: "window";
      readonly skill: string;
      readonly window: Omit<SkillTaken, "skill" | "area" | "doubtful">;
    }
  /** A correction of another kind, such as two ids that are one child. */
  | { readonly kind: "decision"; readonly decision: Decision }
  | { readonly kind: "setting"; readonly name: string; readonly value: unknown }
  /** Everything stands as it is shown. A word that only a person can settle stays open. */
  | { readonly kind: "confirm" };

/** The understanding after one choice. Nothing is read: the pane may hold it without the workbook. */
export function applyChoice(before: Understanding, choice: Choice): Understanding {
  switch (choice.kind) {
    case "sheet":
      return withSheet(before, choice.key, (sheet) => retaken(before, sheet, choice.is));
    case "heading":
      return withHeading(before, choice.key, choice.cell, { means: choice.means, skill: null });
    case "skill heading":
      return withHeading(before, choice.key, choice.cell, { means: null, skill: choice.skill });
    case "word":
      return {
        ...before,
        words: before.words.map((each) =>
          each.word === choice.word ? settled({ ...each, means: choice.means }) : each,
        ),
      };
    case "area word":
      return {
        ...before,
        areas: before.areas.map((each) =>
          each.word === choice.word ? settled({ ...each, means: choice.means }) : each,
        ),
      };
    case "two-digit years":
      return { ...before, shortYears: before.shortYears && settled({ ...before.shortYears, means: choice.means }) };
    case "name":
      return {
        ...before,
        names: before.names.map((each) =>
          each.column === choice.column && each.spelling === choice.spelling
            ? settled({ ...each, means: choice.means })
            : each,
        ),
      };
    case "area":
      return withSkills(before, ({ skill }) => skill === choice.skill, { area: choice.area });
    case "area of all":
      return withSkills(before, ({ area }) => area === choice.of, { area: choice.area });
    case "window":
      return withSkills(before, ({ skill }) => skill === choice.skill, choice.window);
    case "decision":
      return { ...before, decisions: [...before.decisions, choice.decision] };
    case "setting":
      return { ...before, settings: { ...before.settings, [choice.name]: choice.value } };
    case "confirm":
      return confirmed(before);
  }
}

/** The kinds that the menu of a sheet offers. */
export function sheetOptions(): readonly SheetKind[] {
  return SHEET_KINDS;
}

/** What the menu of a heading offers: the columns of its kind of sheet; null is "not used". In a grid any heading may be a skill. */
export function headingOptions(is: SheetKind): readonly (string | null)[] {
  const columns = (specOfKind(is)?.columns ?? []).map(({ heading }) => heading);
  return is === "children" ? [...columns, GROUP, null] : [...columns, null];
}

export function wordOptions(): readonly WordMeaning[] {
  return WORD_MEANINGS;
}

export function areaOptions(understanding: Understanding): readonly string[] {
  const own = understanding.skills.map(({ area }) => area).filter((area) => area !== "");
  return [...new Set<string>([...AREAS, ...own])];
}

/** What the menu of a word among the areas of referrals offers. */
export function areaWordOptions(understanding: Understanding): readonly string[] {
  return [...areaOptions(understanding), LEAVE_OUT];
}

function settled<T extends { readonly doubtful: boolean }>(each: T): T {
  return { ...each, doubtful: false };
}

function withSheet(before: Understanding, key: string, change: (sheet: SheetTaken) => SheetTaken): Understanding {
  const sheets = before.sheets.map((each) => (each.key === key ? change(each) : each));
  return { ...before, sheets };
}

function retaken(before: Understanding, sheet: SheetTaken, is: SheetKind): SheetTaken {
  const known = before.skills.map(({ skill }) => headingKey(skill));
  const headings = guessHeadings(is, sheet.headings, known);
  return { ...sheet, is, why: "You chose it.", doubtful: false, headings };
}

function withHeading(
  before: Understanding,
  key: string,
  cell: string,
  taken: Pick<HeadingSeen, "means" | "skill">,
): Understanding {
  return withSheet(before, key, (sheet) => ({
    ...sheet,
    headings: sheet.headings.map((each) => {
      if (each.cell === cell) return { ...each, ...taken, doubtful: false };
      // One column has one heading: the one chosen last.
      const isTaken =
        taken.means !== null && taken.means !== GROUP && each.means === taken.means && each.skill === null;
      return isTaken ? { ...each, means: null, doubtful: false } : each;
    }),
  }));
}

function withSkills(
  before: Understanding,
  isMeant: (skill: SkillTaken) => boolean,
  change: Partial<SkillTaken>,
): Understanding {
  return { ...before, skills: before.skills.map((each) => (isMeant(each) ? settled({ ...each, ...change }) : each)) };
}

function confirmed(before: Understanding): Understanding {
  return {
    ...before,
    sheets: before.sheets.map((sheet) => settled({ ...sheet, headings: sheet.headings.map(settled) })),
    words: before.words.map((each) => (each.means === null ? each : settled(each))),
    areas: before.areas.map((each) => (each.means === null ? each : settled(each))),
    shortYears: before.shortYears && settled(before.shortYears),
    names: before.names.map(settled),
    skills: before.skills.map(settled),
  };
}
