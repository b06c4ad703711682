import { z } from "zod";
import { keyOf } from "../cells/words";
import {
  areaShape,
  type HeadingTaken,
  nameShape,
  SHORT_YEAR_MEANINGS,
  type ShortYearMeaning,
  type SheetKind,
  sheetShape,
  skillShape,
  WINDOW_EMPTY,
  windowIsWhole,
  type WordMeaning,
  wordShape,
} from "./settled";

const text = z.string({ error: "must be text" }).refine((value) => keyOf(value) !== "", "must not be blank");
const revoked = z.boolean({ error: "revoked must be true or false" }).optional();

const tableName = z.enum(["Children", "Observations", "Skills", "Referrals", "Signs", "Ratings"], {
  error: "table must be one of Children, Observations, Skills, Referrals, Signs and Ratings",
});

const DECISION_KINDS = [
  "same-child",
  "skill-alias",
  "date-order",
  "heading",
  "two-digit-years",
  "sheet",
  "word",
  "area",
  "name",
  "skill",
] as const;

/** A decision as it stands in a decisions file. */
const decision = z.discriminatedUnion(
  "kind",
  [
    z.strictObject({ kind: z.literal("same-child"), child: text, alias: text, revoked }),
    z.strictObject({ kind: z.literal("skill-alias"), skill: text, alias: text, revoked }),
    z.strictObject({
      kind: z.literal("date-order"),
      table: tableName,
      column: text,
      order: z.enum(["day first", "month first", "year first"], {
        error: "order must be day first, month first or year first",
      }),
      revoked,
    }),
    z.strictObject({ kind: z.literal("heading"), table: tableName, heading: text, means: text, revoked }),
    z.strictObject({
      kind: z.literal("two-digit-years"),
      means: z.enum(SHORT_YEAR_MEANINGS, { error: `means must be ${SHORT_YEAR_MEANINGS.join(" or ")}` }),
      revoked,
    }),
    z.strictObject({ kind: z.literal("sheet"), ...sheetShape, revoked }),
    z.strictObject({ kind: z.literal("word"), ...wordShape, revoked }),
    z.strictObject({ kind: z.literal("area"), ...areaShape, revoked }),
    z.strictObject({ kind: z.literal("name"), ...nameShape, revoked }),
    z.strictObject({ kind: z.literal("skill"), ...skillShape, revoked }).refine(windowIsWhole, WINDOW_EMPTY),
  ],
  { error: `kind must be one of ${DECISION_KINDS.slice(0, -1).join(", ")} and ${DECISION_KINDS.at(-1) ?? ""}` },
);

/**
 * A repair decision: what a person settled about the records, kept apart from the data, revocable, and carried to the
 * next quarter.
 */
export type Decision =
  /** Two ids are one child: rows under `alias` count as rows of `child`. */
  | { readonly kind: "same-child"; readonly child: string; readonly alias: string; readonly revoked?: boolean }
  /** A skill written another way: `alias` is read as `skill`. */
  | { readonly kind: "skill-alias"; readonly skill: string; readonly alias: string; readonly revoked?: boolean }
  /** How the text dates of a column are to be read. */
  | {
      readonly kind: "date-order";
      readonly table: string;
      readonly column: string;
      readonly order: "day first" | "month first" | "year first";
      readonly revoked?: boolean;
    }
  /** What a heading of the workbook stands for. */
  | {
      readonly kind: "heading";
      readonly table: string;
      readonly heading: string;
      readonly means: string;
      readonly revoked?: boolean;
    }
  /** How years of two digits are read, in all text dates of the workbook. */
  | { readonly kind: "two-digit-years"; readonly means: ShortYearMeaning; readonly revoked?: boolean }
  | SheetDecision
  | WordDecision
  | AreaDecision
  | NameDecision
  | SkillDecision;

/** What a sheet, or a part of one, is, and what its headings are taken for. Its other headings are not read. */
export interface SheetDecision {
  readonly kind: "sheet";
  readonly sheet: string;
  readonly is: SheetKind;
  readonly headerRows: readonly number[];
  readonly headings: readonly HeadingTaken[];
  readonly revoked?: boolean;
}

/** What a word in a place for results stands for; "" is a blank cell there. */
export interface WordDecision {
  readonly kind: "word";
  readonly word: string;
  readonly means: WordMeaning | null;
  readonly revoked?: boolean;
}

/** What a word among the areas of referrals stands for: an area, or several separated by semicolons. */
export interface AreaDecision {
  readonly kind: "area";
  readonly word: string;
  readonly means: string | null;
  readonly revoked?: boolean;
}

/** A spelling in a column of Children that is read as another. */
export interface NameDecision {
  readonly kind: "name";
  readonly column: string;
  readonly spelling: string;
  readonly means: string;
  readonly revoked?: boolean;
}

/** A skill that stands in no table of skills, such as a heading of a grid. */
export interface SkillDecision {
  readonly kind: "skill";
  readonly skill: string;
  readonly label?: string | undefined;
  readonly area?: string | undefined;
  readonly opens?: number | null | undefined;
  readonly closes?: number | null | undefined;
  readonly ageBasis?: "corrected" | "chronological" | undefined;
  readonly expectedShare?: number | null | undefined;
  readonly basis?: string | undefined;
  readonly revoked?: boolean;
}

/** The decisions that a person makes about one id, column or heading. */
export type Repair = Exclude<Decision, { kind: OfUnderstanding }>;

/** Decisions of which an understanding is made; the others are corrections one by one. */
type OfUnderstanding = "sheet" | "word" | "area" | "name" | "skill";

export function isRepair(decision: Decision): decision is Repair {
  return !["sheet", "word", "area", "name", "skill"].includes(decision.kind);
}

export interface Decisions {
  readonly decisions: readonly Decision[];
}

/** Reads a decisions file: a list of decisions, or an object that holds one. Gives one plain sentence for every fault. */
export function parseDecisions(json: unknown): Decisions | { readonly messages: readonly string[] } {
  const list = Array.isArray(json)
    ? json
    : z.object({ decisions: z.array(z.unknown()) }).safeParse(json).data?.decisions;
  if (list === undefined) {
    return {
      messages: ["Corrections: the file must have a list of corrections. Save it again from the records view."],
    };
  }
  const parsed = list.map((each) => decision.safeParse(each));
  const messages = parsed.flatMap((each, i) =>
    (each.error?.issues ?? []).map((issue) => `Correction ${i + 1}: ${sentence(issue.path, issue.message)}`),
  );
  const decisions = parsed.flatMap((each) => (each.success ? [plain(each.data)] : []));
  const all = [...messages, ...contradictions(decisions), ...circles(decisions)];
  return all.length > 0 ? { messages: all } : { decisions };
}

function sentence(path: readonly PropertyKey[], message: string): string {
  const key = String(path.at(-1) ?? "");
  return `${key === "" || message.startsWith(key) ? message : `${key} ${message}`}.`;
}

function plain(value: z.infer<typeof decision>): Decision {
  const { revoked: isRevoked, ...rest } = value;
  return isRevoked === undefined ? rest : { ...rest, revoked: isRevoked };
}

/** One alias that two decisions in force read in two ways. */
function contradictions(decisions: readonly Decision[]): string[] {
  const said = new Map<string, { first: number; means: string }>();
  return decisions.flatMap((each, i) => {
    if (each.revoked) return [];
    const { about, means } = meaning(each);
    const earlier = said.get(about);
    if (!earlier) said.set(about, { first: i, means });
    if (!earlier || earlier.means === means) return [];
    return [`Correction ${i + 1}: it says otherwise than correction ${earlier.first + 1}. Revoke one of the two.`];
  });
}

/** Same-child and skill-alias decisions that lead back to where they began: none of the ids would be the child. */
function circles(decisions: readonly Decision[]): string[] {
  const inForce = decisions.filter(
    ({ kind, revoked }) => !revoked && (kind === "same-child" || kind === "skill-alias"),
  );
  const next = new Map(inForce.map((each) => [meaning(each).about, aboutOf(each.kind, meaning(each).means)]));
  return decisions.flatMap((each, i) => {
    if (!inForce.includes(each)) return [];
    const start = meaning(each).about;
    let at = next.get(start);
    for (let steps = 0; at !== undefined && at !== start && steps < next.size; steps += 1) at = next.get(at);
    return at === start
      ? [`Correction ${i + 1}: it leads back to its own alias. Revoke one correction of the circle.`]
      : [];
  });
}

function aboutOf(kind: string, ...parts: string[]): string {
  return JSON.stringify([kind, ...parts.map(keyOf)]);
}

function meaning(each: Decision): { about: string; means: string } {
  const about = (...parts: string[]) => aboutOf(each.kind, ...parts);
  if (each.kind === "same-child") return { about: about(each.alias), means: keyOf(each.child) };
  if (each.kind === "skill-alias") return { about: about(each.alias), means: keyOf(each.skill) };
  if (each.kind === "date-order") return { about: about(each.table, each.column), means: each.order };
  if (each.kind === "two-digit-years") return { about: about(), means: each.means };
  if (each.kind === "heading") return { about: about(each.table, each.heading), means: keyOf(each.means) };
  return settledMeaning(each);
}

function settledMeaning(each: Exclude<Decision, Repair>): {
  about: string;
  means: string;
} {
  const about = (...parts: string[]) => aboutOf(each.kind, ...parts);
  if (each.kind === "word") return { about: about(each.word), means: String(each.means) };
  if (each.kind === "area") return { about: about(each.word), means: keyOf(each.means ?? "") };
  if (each.kind === "name") return { about: about(each.column, each.spelling), means: keyOf(each.means) };
  const whole = JSON.stringify({ ...each, revoked: undefined });
  return each.kind === "skill" ? { about: about(each.skill), means: whole } : { about: about(whole), means: whole };
}
