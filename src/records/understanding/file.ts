import { z } from "zod";
import { parseSettings } from "../../settings/settings";
import { type Decision, isRepair, parseDecisions, type SheetDecision } from "../corrections/decisions";
import {
  areaShape,
  DAY_OF_SKILL,
  GROUP,
  type HeadingTaken,
  meaningTaken,
  nameShape,
  SHEET_DAY,
  sheetShape,
  skillShape,
  WINDOW_EMPTY,
  windowIsWhole,
  wordShape,
} from "../corrections/settled";
import { columnMeant } from "../headings/headings";
import { headingOptions } from "./choices";
import { specOfKind } from "./kinds";
import type { HeadingSeen, SheetTaken, SkillTaken, Understanding } from "./understanding";

/** What a person settled about a workbook, as it is kept: settings, understanding and corrections in one file. */
export interface UnderstandingFile {
  readonly settings: Readonly<Record<string, unknown>>;
  /** Everything else, in the one list that every reading takes. */
  readonly decisions: readonly Decision[];
}

const schema = z.strictObject({
  windowline: z.literal(1, { error: "must be 1" }),
  sheets: z.array(z.strictObject(sheetShape)).default([]),
  words: z.array(z.strictObject(wordShape)).default([]),
  areas: z.array(z.strictObject(areaShape)).default([]),
  names: z.array(z.strictObject(nameShape)).default([]),
  skills: z.array(z.strictObject(skillShape).refine(windowIsWhole, WINDOW_EMPTY)).default([]),
  decisions: z.array(z.unknown()).default([]),
  settings: z.record(z.string(), z.unknown()).default({}),
});

/** Reads an understanding file. Gives one plain sentence for every fault; an unknown key is named. */
export function fromFile(json: unknown): UnderstandingFile | { readonly messages: readonly string[] } {
  if (typeof json !== "object" || json === null || !("windowline" in json)) {
    return {
      messages: [
        'This is not an understanding file: it must begin with "windowline": 1. Make one with "windowline understand BOOK.xlsx --out FILE".',
      ],
    };
  }
  const parsed = schema.safeParse(json);
  if (!parsed.success) return { messages: parsed.error.issues.map(sentenceOf) };
  const { sheets, words, areas, names, skills, decisions, settings } = parsed.data;
  const repairs = parseDecisions(decisions);
  const known = parseSettings(settings, 1900);
  const messages = [
    ...sheets.flatMap((sheet, i) => foreignColumns(sheet, i)),
    ...[repairs, known].flatMap((each) => ("messages" in each ? each.messages : [])),
  ];
  if (messages.length > 0 || "messages" in repairs) return { messages };
  const all: Decision[] = [
    ...sheets.map((each) => ({ kind: "sheet" as const, ...each })),
    ...words.map((each) => ({ kind: "word" as const, ...each })),
    ...areas.map((each) => ({ kind: "area" as const, ...each })),
    ...names.map((each) => ({ kind: "name" as const, ...each })),
    ...skills.map((each) => ({ kind: "skill" as const, ...each })),
    ...repairs.decisions,
  ];
  const again = parseDecisions(all);
  return "messages" in again ? again : { settings, decisions: again.decisions };
}

/** One sentence for each heading that is taken for a column that its kind of sheet does not have. */
function foreignColumns({ is, headings }: Pick<SheetDecision, "is" | "headings">, at: number): string[] {
  const spec = specOfKind(is);
  if (spec === null) return [];
  return headings.flatMap((each, i) => {
    const means = each.heading === SHEET_DAY ? null : meaningTaken(each);
    const isKnown = means === null || (means === GROUP && is === "children") || columnMeant(spec, means) !== null;
    if (isKnown) return [];
    const allowed = headingOptions(is).flatMap((option) => option ?? []);
    return [
      `sheets ${at + 1}, headings ${i + 1}: "${means}" is no column of ${is}. Write one of ${allowed.join(", ")}, or null for not used.`,
    ];
  });
}

/** The file of an understanding, to be written as JSON. */
export function toFile(understanding: Understanding): Record<string, unknown> {
  const decisions = decisionsOf(understanding);
  const of = <Kind extends Decision["kind"]>(kind: Kind) =>
    decisions.flatMap((each) => (each.kind === kind && !each.revoked ? [withoutKind(each)] : []));
  return {
    windowline: 1,
    sheets: of("sheet"),
    words: of("word"),
    ...(understanding.areas.length > 0 ? { areas: of("area") } : {}),
    names: of("name"),
    ...(understanding.skills.length > 0 ? { skills: of("skill") } : {}),
    decisions: decisions.filter(isRepair),
    settings: understanding.settings,
  };
}

/** The understanding as the list of decisions that every reading takes (`readRecords`, `runReport` and the others). */
export function decisionsOf({ sheets, words, areas, shortYears, names, skills, decisions }: Understanding): Decision[] {
  return [
    ...onceEach(sheets.map(sheetDecision)),
    ...words.map(({ word, means }): Decision => ({ kind: "word", word, means })),
    ...areas.map(({ word, means }): Decision => ({ kind: "area", word, means })),
    ...(shortYears ? [{ kind: "two-digit-years" as const, means: shortYears.means }] : []),
    ...names.map(({ column, spelling, means }): Decision => ({ kind: "name", column, spelling, means })),
    ...skills.map(skillDecision),
    ...decisions,
  ];
}

/** Sheets of several files that are laid out alike have one decision. */
function onceEach(decisions: readonly SheetDecision[]): SheetDecision[] {
  return [...new Map(decisions.map((each) => [JSON.stringify(each), each])).values()];
}

function sheetDecision({ sheet, is, headerRows, headings }: SheetTaken): SheetDecision {
  return { kind: "sheet", sheet, is, headerRows, headings: headings.filter(isNamed).map(headingTaken) };
}

function isNamed({ heading }: HeadingSeen): boolean {
  return heading !== "";
}

function headingTaken({ heading, means, skill }: HeadingSeen): HeadingTaken {
  if (skill === null) return { heading, means };
  return means === DAY_OF_SKILL ? { heading, skill, means } : { heading, skill };
}

function skillDecision({ skill, area, opens, closes, ageBasis, expectedShare, basis }: SkillTaken): Decision {
  return { kind: "skill", skill, area, opens, closes, ageBasis, expectedShare, basis };
}

function withoutKind(decision: Decision): Record<string, unknown> {
  return Object.fromEntries(Object.entries(decision).filter(([key]) => key !== "kind" && key !== "revoked"));
}

function sentenceOf(issue: z.core.$ZodIssue): string {
  const place = placeOf(issue.path);
  if (issue.code === "unrecognized_keys") {
    const keys = issue.keys.map((key) => `"${key}"`).join(" and ");
    return `${place || "The file"}: ${keys} is not a key of an understanding file. Remove it, or correct its spelling.`;
  }
  const last = issue.path.at(-1);
  const key = typeof last === "string" ? last : "";
  const message = issue.message.startsWith(key) ? issue.message : `${key} ${issue.message}`;
  return `${place || "The file"}: ${message}.`;
}

/** `sheets 2, headings 3`, counted from 1 as a person counts. */
function placeOf(path: readonly PropertyKey[]): string {
  const parts: string[] = [];
  path.forEach((each, i) => {
    const next = path[i + 1];
    if (typeof each === "string" && typeof next === "number") parts.push(`${each} ${next + 1}`);
  });
  return parts.join(", ");
}
