import type { ReleasableId } from "../../tables/table";
import { counted } from "../../words/numbers";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "../words/days";
import { readReleased, type ReleasedReader, type ReleasedRow } from "../words/read-released";
import { sentencesOf } from "../words/sentences";
import { type ShareKeys, shareWords } from "../words/share-words";
import type { WordsContext } from "../words/words-context";

/** A figure that answers a question: what it is about, and its sentence with its counts, or null where it is held back. */
export interface AnswerFigure {
  readonly about: string;
  readonly sentence: string | null;
}

/** A question that applications and boards ask, the one table that answers it, and the figures of that table that do. */
export interface Question {
  readonly asks: string;
  readonly table: ReleasableId;
  /** @param skills - ids of skills; null for all */
  readonly figures: (table: ReleasedTable, context: WordsContext, skills: readonly string[] | null) => AnswerFigure[];
}

export const QUESTION_IDS = [
  "children",
  "skills-by-age",
  "expected-skills-met",
  "referrals",
  "plans-in-time",
  "outcomes",
  "change",
] as const;
export type QuestionId = (typeof QUESTION_IDS)[number];

export const QUESTIONS: Readonly<Record<QuestionId, Question>> = {
  children: {
    asks: "How many children were in the program on that day?",
    table: "met-by-band",
    figures: childrenFigures,
  },
  "skills-by-age": {
    asks: "How many children had met each skill by an age?",
    table: "reached-by-age",
    figures: (table, context, skills) =>
      rowFigures(table, context, (read, row) => isAsked(read, row, skills) && read.at(row, "met") !== 0),
  },
  "expected-skills-met": {
    asks: "How many of the up-to-date skill checks were met, by area and age group?",
    table: "met-by-band",
    figures: (table, context, skills) =>
      rowFigures(table, context, (read, row) =>
        skills === null ? read.text(row, "skill") === "all" : isAsked(read, row, skills),
      ),
  },
  referrals: {
    asks: "How many referrals were made, and how far did they get?",
    table: "referral-steps",
    figures: (table, context) => rowFigures(table, context, () => true),
  },
  "plans-in-time": {
    asks: "How many plans were in place within 45 days of the referral?",
    table: "referral-steps",
    figures: planFigures,
  },
  outcomes: {
    asks: "What do the two summary statements of child outcomes say?",
    table: "ratings",
    figures: (table, context) => rowFigures(table, context, () => true),
  },
  change: {
    asks: "How did the share of children with each skill change since last year?",
    table: "trend",
    figures: changeFigures,
  },
};

/** Rows with a figure to give: an empty cell is no figure, and so neither shown nor held back. */
function rowFigures(
  table: ReleasedTable,
  context: WordsContext,
  answers: (read: ReleasedReader, row: ReleasedRow) => boolean,
): AnswerFigure[] {
  const read = readReleased(table);
  const sentences = new Map(sentencesOf(table, context).map(({ row, text }) => [row, text]));
  return table.rows.flatMap((row, at) =>
    answers(read, row) && hasShare(read, row)
      ? [{ about: aboutRow(read, row), sentence: sentences.get(at) ?? null }]
      : [],
  );
}

function hasShare(read: ReleasedReader, row: ReleasedRow): boolean {
  const of = ["assessed", "of", "children"].map((key) => read.at(row, key)).find((value) => value !== null);
  return of !== undefined && of !== 0;
}

function aboutRow(read: ReleasedReader, row: ReleasedRow): string {
  const name = read.text(row, "skill") === "all" ? read.text(row, "area") : read.text(row, "skill");
  const parts = [name, ...["band", "age", "step", "outcome", "statement"].map((key) => read.text(row, key))];
  return [read.group(row), ...parts].filter((part) => part !== "").join(", ");
}

function isAsked(read: ReleasedReader, row: ReleasedRow, skills: readonly string[] | null): boolean {
  const skill = read.text(row, "skill");
  return skills === null ? skill !== "all" : skills.includes(skill);
}

/** The children of all age groups together: every skill has the same, so its first skill says them. */
function childrenFigures(table: ReleasedTable, context: WordsContext): AnswerFigure[] {
  const read = readReleased(table);
  const groups = [...new Set(table.rows.map((row) => read.group(row)))];
  return groups.map((group) => {
    const rows = table.rows.filter((row) => read.group(row) === group);
    const skill = read.text(rows[0]!, "skill");
    const counts = rows.filter((row) => read.text(row, "skill") === skill).map((row) => read.number(row, "children"));
    const known = counts.filter((count) => count !== null);
    const children = known.length === counts.length ? known.reduce((sum, count) => sum + count, 0) : null;
    const who = group === "" ? "" : `${group}: `;
    const day = isoInWords(context.asOf);
    return {
      about: group || "All children",
      sentence: children === null ? null : `${who}${counted(children)} children were in the program on ${day}.`,
    };
  });
}

const IN_TIME: ShareKeys = { count: "within45", of: "of45", share: "" };

function planFigures(table: ReleasedTable, context: WordsContext): AnswerFigure[] {
  const read = readReleased(table);
  return table.rows
    .filter((row) => read.text(row, "step").toLowerCase() === "plan" && read.at(row, "of45") !== 0)
    .map((row) => {
      const words = shareWords(read, row, IN_TIME, context.level);
      const period = `made between ${isoInWords(context.from)} and ${isoInWords(context.asOf)}`;
      const about = [read.group(row), "plan within 45 days"].filter((part) => part !== "").join(", ");
      const sentence =
        words && `Of ${words.of} referrals ${period} that can be judged, ${words.count} had a plan within 45 days.`;
      return { about, sentence };
    });
}

const MET: ShareKeys = { count: "met", of: "assessed", share: "shareMet" };
const QUARTERS_A_YEAR = 4;

function changeFigures(table: ReleasedTable, context: WordsContext, skills: readonly string[] | null): AnswerFigure[] {
  const read = readReleased(table);
  const quarters = [...new Set(table.rows.map((row) => read.text(row, "quarter")))];
  const [now, before] = [quarters.at(-1), quarters.at(-1 - QUARTERS_A_YEAR)];
  if (now === undefined || before === undefined) return [];
  const earlier = new Map(
    table.rows.filter((row) => read.text(row, "quarter") === before).map((row) => [aboutRow(read, row), row]),
  );
  return table.rows.flatMap((row): AnswerFigure[] => {
    const about = aboutRow(read, row);
    const then = earlier.get(about);
    if (read.text(row, "quarter") !== now || then === undefined || !isAsked(read, row, skills)) return [];
    const [a, b] = [then, row].map((each) => shareWords(read, each, MET, context.level));
    if (!a || !b) return [{ about, sentence: null }];
    const skill = context.skills.find(({ id }) => id === read.text(row, "skill"))?.label || read.text(row, "skill");
    const group = read.group(row) === "" ? "" : `${read.group(row)}: `;
    const said = `${group}"${skill}" was met by ${a.count} of ${a.of} children checked at the end of ${before}${a.percent}, and by ${b.count} of ${b.of} at the end of ${now}${b.percent}.`;
    return [{ about, sentence: said }];
  });
}
