import type { Decision } from "../corrections/decisions";
import { SHEET_DAY, type SheetKind, type ShortYearMeaning, type WordMeaning } from "../corrections/settled";

/**
 * How a workbook is understood: sheet by sheet, heading by heading, word by word, with the reason, and with a mark where it
 * is doubtful. A person changes it by choosing from menus (`applyChoice`), confirms it once, and keeps it as a file
 * (`toFile`, `fromFile`) that is applied to the next quarter's workbook.
 *
 * It carries headings, words for results, and spellings of sites and staff that look like variants of each other. It never
 * carries another cell of a child: no id, no name, no date, no free text.
 */
export interface Understanding {
  /** Every sheet in the order of the workbook; a sheet that holds two tables is there twice. */
  readonly sheets: readonly SheetTaken[];
  /** Words that stand among results and are not among those that everyone knows, the most frequent first. */
  readonly words: readonly WordTaken[];
  /** Cells among results with another text that is shown nowhere: it is there once, or looks like a name or a note. */
  readonly resultsNotShown: number;
  /** Words among the areas of referrals that name no area, the most frequent first. */
  readonly areas: readonly AreaTaken[];
  /** Dates whose years have two digits; null where there are none. */
  readonly shortYears: ShortYears | null;
  /** Spellings of sites and staff that look like another spelling of the same. */
  readonly names: readonly NameTaken[];
  /** Rows of Children that may be one child twice. Never joined unasked. */
  readonly sameChild: readonly SameChild[];
  /** Columns that matter and were not found. */
  readonly missing: readonly MissingColumn[];
  /** Skills that no table of skills holds: the headings of the grids, where there is no such table. */
  readonly skills: readonly SkillTaken[];
  /** What is not as the file of an earlier workbook says; empty without such a file. */
  readonly changes: readonly Change[];
  /** Corrections of other kinds, and settings, carried along. */
  readonly decisions: readonly Decision[];
  readonly settings: Readonly<Record<string, unknown>>;
}

export interface SheetTaken {
  /** Names this part in a choice; stable while the workbook stays as it is. */
  readonly key: string;
  /** Where the records come from several files. */
  readonly file?: string;
  readonly sheet: string;
  readonly is: SheetKind;
  /** One plain sentence. */
  readonly why: string;
  readonly doubtful: boolean;
  /** As the sheet numbers them; empty where nothing on it looks like headings. */
  readonly headerRows: readonly number[];
  /** Rows below the headings that hold something. */
  readonly rows: number;
  readonly headings: readonly HeadingSeen[];
}

/** What the cells below a heading hold. `scores`: a few small whole numbers, again and again. */
export type ContentKind =
  "dates" | "numbers" | "scores" | "results" | "yes or no" | "few words" | "ids or names" | "text" | "nothing";

/** What to call the cells below a heading: of a column of numbers they are never scores. */
export function contentShown({ means, content }: Pick<HeadingSeen, "means" | "content">): ContentKind {
  return content === "scores" && means !== null && NUMBERS.has(means) ? "numbers" : content;
}

const NUMBERS: ReadonlySet<string> = new Set(["Weeks early", "Gestation", "Opens", "Closes", "Expected share"]);

export interface HeadingSeen {
  /** As it is shown, and as the file names it. */
  readonly heading: string;
  /** Its cell, such as C3; "" for the name of the sheet. */
  readonly cell: string;
  /** The column it is taken for, `GROUP`, or null: not used, or a skill. `Date` beside a skill: the days of that skill. */
  readonly means: string | null;
  /** The skill it is taken for, in a grid. */
  readonly skill: string | null;
  readonly content: ContentKind;
  /** Filled cells below it. */
  readonly cells: number;
  readonly doubtful: boolean;
  /** The heading that stands above it and spans several, often an area; "" without one. */
  readonly above: string;
}

export interface WordTaken {
  /** As most cells write it; "" stands for the blank cells among ticks. */
  readonly word: string;
  readonly cells: number;
  /** null: a person has to choose. */
  readonly means: WordMeaning | null;
  readonly why: string;
  readonly doubtful: boolean;
}

export interface ShortYears {
  readonly cells: number;
  /** The headings they are under. */
  readonly headings: readonly string[];
  readonly means: ShortYearMeaning;
  readonly doubtful: boolean;
}

export interface AreaTaken {
  /** As most cells write it. */
  readonly word: string;
  /** Referrals that have it. */
  readonly cells: number;
  /** An area, or several separated by semicolons; "leave out"; null: a person has to choose. */
  readonly means: string | null;
  readonly why: string;
  readonly doubtful: boolean;
}

export interface NameTaken {
  /** Site or Therapist. */
  readonly column: string;
  readonly spelling: string;
  readonly cells: number;
  /** The spelling that it is read as; its own where the two stay apart. */
  readonly means: string;
  /** The spelling that most rows have: what the button offers. */
  readonly likely: string;
  readonly doubtful: boolean;
}

export interface SameChild {
  /** The two cells with the ids, such as `Kids!A5`. `sameChildDecision` makes the correction from them. */
  readonly first: string;
  readonly second: string;
  readonly why: string;
}

export interface MissingColumn {
  readonly table: string;
  readonly column: string;
  /** One sentence: "No column says who left the program. Is it Exit?" */
  readonly sentence: string;
  /** The likeliest heading, with its place; null where none is likely. */
  readonly candidate: { readonly key: string; readonly heading: string; readonly cell: string } | null;
}

export interface SkillTaken {
  readonly skill: string;
  /** "" as long as nobody has chosen one. */
  readonly area: string;
  readonly opens: number | null;
  readonly closes: number | null;
  readonly ageBasis: "corrected" | "chronological";
  readonly expectedShare: number | null;
  readonly basis: string;
  /** The area is the heading above those of the grid, or a guess: a person has to say that it is right. */
  readonly doubtful: boolean;
}

export interface Change {
  readonly kind: "sheet moved" | "sheet gone" | "sheet new" | "heading moved" | "heading gone" | "heading new";
  readonly sheet: string;
  readonly heading: string;
  /** One sentence that says what happened and what was done. */
  readonly sentence: string;
}

/** How much is still doubtful: what the button "Confirm" would settle, and what only a person can. */
export function openQuestions(understanding: Understanding): { readonly doubtful: number; readonly unsettled: number } {
  const { sheets, words, areas, shortYears, names, skills } = understanding;
  const headings = sheets.filter(({ is }) => is !== "not used").flatMap((sheet) => sheet.headings);
  const asked = [...words, ...areas];
  const doubtful: { readonly doubtful: boolean }[] = [...sheets, ...headings, ...names, ...skills];
  doubtful.push(...asked.filter(({ means }) => means !== null), ...(shortYears ? [shortYears] : []));
  const days = headings.filter(({ heading, means }) => heading === SHEET_DAY && means === null);
  return {
    doubtful: doubtful.filter((each) => each.doubtful).length,
    unsettled: asked.filter(({ means }) => means === null).length + days.length,
  };
}
