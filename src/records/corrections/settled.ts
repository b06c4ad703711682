import { z } from "zod";
import { dayFromIso } from "../../age/day";
import { keyOf } from "../cells/words";

/** What a sheet, or a part of one, can be. `grid`: a row per child, or child and visit, and a column per skill. */
export const SHEET_KINDS = [
  "children",
  "observations",
  "grid",
  "skills",
  "referrals",
  "signs",
  "ratings",
  "not used",
] as const;

export type SheetKind = (typeof SHEET_KINDS)[number];

/** What a word in a place for results can stand for. */
export const WORD_MEANINGS = ["met", "emerging", "not met", "lost", "leave out"] as const;

export type WordMeaning = (typeof WORD_MEANINGS)[number];

/** `means` of a heading of Children that is kept as a column to group by. */
export const GROUP = "Group";

/** The heading under which the name of a sheet itself can be taken, such as one sheet per therapist. */
export const SHEET_NAME = "(name of the sheet)";

/** The heading under which the one day of all checks of a grid is kept, where no column has days; it means that day as ISO text. */
export const SHEET_DAY = "(day of the checks)";

/** The heading under which rows that hold nothing but a title are taken, such as a site above its children. */
export const ROW_TITLE = "(title above the rows)";

/** Whether a heading stands on no cell of the sheet. */
export function isVirtual({ heading }: { readonly heading: string }): boolean {
  return heading === SHEET_NAME || heading === SHEET_DAY || heading === ROW_TITLE;
}

/** `means` of a heading whose cells are the days on which one skill was checked. */
export const DAY_OF_SKILL = "Date";

/** What one heading is taken for: a column by its name, a skill by its id, the days of one skill, or nothing. */
export type HeadingTaken =
  | { readonly heading: string; readonly means: string | null }
  | { readonly heading: string; readonly skill: string }
  | { readonly heading: string; readonly skill: string; readonly means: typeof DAY_OF_SKILL };

export function skillTaken(heading: HeadingTaken): string | null {
  return "skill" in heading && !("means" in heading) ? heading.skill : null;
}

export function meaningTaken(heading: HeadingTaken): string | null {
  return "means" in heading && !("skill" in heading) ? heading.means : null;
}

/** The skill whose days stand below a heading; null where it is no such heading. */
export function skillOfDays(heading: HeadingTaken): string | null {
  return "means" in heading && "skill" in heading ? heading.skill : null;
}

const text = z.string({ error: "must be text" });
const filled = text.refine((value) => keyOf(value) !== "", "must not be blank");
const MONTHS = "must be months of age from 0 to 216, or null";
const months = z.number({ error: MONTHS }).min(0, MONTHS).max(216, MONTHS).nullable().optional();
const SHARE = "must be a share above 0, up to 1, such as 0.75, or null where the source gives none";

export const headingSchema = z
  .strictObject({ heading: filled, means: filled.nullable().optional(), skill: filled.optional() })
  .refine(
    ({ means, skill }) => (means === undefined) !== (skill === undefined) || means === DAY_OF_SKILL,
    `needs either means or skill, or skill with means "${DAY_OF_SKILL}" for the days of that skill`,
  )
  .refine(
    ({ heading, means }) => heading !== SHEET_DAY || !means || dayFromIso(means) !== null,
    `means of "${SHEET_DAY}" must be a day such as 2026-09-30`,
  )
  .transform(({ heading, means, skill }): HeadingTaken => {
    if (skill === undefined) return { heading, means: means ?? null };
    return means === DAY_OF_SKILL ? { heading, skill, means } : { heading, skill };
  });

export const sheetShape = {
  sheet: filled,
  is: z.enum(SHEET_KINDS, { error: `is must be one of ${SHEET_KINDS.join(", ")}` }),
  /** As the sheet numbers them: one row, or two that are read together. */
  headerRows: z.array(z.number().int().min(1)).max(2, "must be one row or two"),
  headings: z.array(headingSchema),
};

export const wordShape = {
  /** "" is a blank cell among results. */
  word: text,
  /** null: not settled yet, so that its cells are listed and not used. */
  means: z.enum(WORD_MEANINGS, { error: `means must be one of ${WORD_MEANINGS.join(", ")}` }).nullable(),
};

/** `means`: an area, or several separated by semicolons; "leave out"; null: not settled yet. */
export const areaShape = { word: filled, means: filled.nullable() };

/** How years of two digits are read: as 2000 to 2099, or not at all. */
export const SHORT_YEAR_MEANINGS = ["2000 to 2099", "leave out"] as const;

export type ShortYearMeaning = (typeof SHORT_YEAR_MEANINGS)[number];

/** In place of an area: referrals for it are left out. */
export const LEAVE_OUT = "leave out";

export const nameShape = { column: filled, spelling: filled, means: filled };

/** A skill that stands in no table of skills. What is left out is not known: no window is ever made up. */
export const skillShape = {
  skill: filled,
  label: text.optional(),
  /** "" or left out: not chosen yet. */
  area: text.optional(),
  opens: months,
  closes: months,
  ageBasis: z
    .enum(["corrected", "chronological"], {
      error:
        "ageBasis must be corrected (from the due date of a child born early) or chronological (from the birth date)",
    })
    .optional(),
  expectedShare: z.number({ error: SHARE }).gt(0, SHARE).max(1, SHARE).nullable().optional(),
  basis: text.optional(),
};

/** A window that closes before it opens would hold no age. */
export function windowIsWhole({
  opens,
  closes,
}: {
  opens?: number | null | undefined;
  closes?: number | null | undefined;
}): boolean {
  return (opens ?? null) === null || (closes ?? null) === null || (opens as number) < (closes as number);
}

export const WINDOW_EMPTY = "closes must be later than opens";
