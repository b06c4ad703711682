import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import { counted } from "../../words/numbers";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "../words/days";
import { readReleased, type ReleasedReader, type ReleasedRow } from "../words/read-released";
import { asRounded, sentencesOf } from "../words/sentences";
import { type ShareKeys, shareWords } from "../words/share-words";
import type { AnswerFigure, WordsContext } from "../words/words-context";

/** A question that applications and boards ask, the one table that answers it, and the figures of that table that do. */
export interface Question {
  readonly id: string;
  readonly asks: string;
  /** In a few words, where several are asked together. */
  readonly name: string;
  readonly table: ReleasableId;
  readonly figures: (table: ReleasedTable, context: WordsContext) => AnswerFigure[];
}

export const QUESTION_IDS = [
  "children",
  "skills-by-age",
  "skills-met",
  "referrals",
  "plans-in-time",
  "outcomes",
  "change",
] as const;
export type QuestionId = (typeof QUESTION_IDS)[number];

const ASKED: Readonly<Record<QuestionId, Omit<Question, "id">>> = {
  children: {
    asks: "How many children were in the program on that day?",
    name: "children in the program",
    table: "met-by-band",
    figures: childrenFigures,
  },
  "skills-by-age": {
    asks: "How many children had met each skill by an age?",
    name: "skills by an age",
    table: "reached-by-age",
    figures: (table, context) =>
      rowFigures(table, context, (read, row) => !isArea(read, row) && read.at(row, "met") !== 0),
  },
  "skills-met": {
    asks: "How many of the up-to-date skill checks were met, by area and age group, skills not yet expected included?",
    name: "skill checks met",
    table: "met-by-band",
    figures: (table, context) => rowFigures(table, context, isArea),
  },
  referrals: {
    asks: "How many referrals were made, and how far did they get?",
    name: "referrals and how far they got",
    table: "referral-steps",
    figures: (table, context) => rowFigures(table, context, () => true),
  },
  "plans-in-time": {
    asks: "How many plans were in place within 45 days of the referral?",
    name: "plans within 45 days",
    table: "referral-steps",
    figures: planFigures,
  },
  outcomes: {
    asks: "What do the two summary statements of child outcomes say?",
    name: "summary statements",
    table: "ratings",
    figures: (table, context) => rowFigures(table, context, () => true),
  },
  change: {
    asks: "How did the share of children with each skill change since last year?",
    name: "change since last year",
    table: "trend",
    figures: changeFigures,
  },
};

/** The questions in the order in which they are offered. */
export const QUESTIONS: readonly (Question & { readonly id: QuestionId })[] = QUESTION_IDS.map((id) => ({
  id,
  ...ASKED[id],
}));

/** A table taken as a question: every share of it is wanted. */
export function questionOfTable(table: ReleasableId): Question {
  const { name, about } = TABLE_CATALOGUE[table];
  return { id: table, asks: about, name, table, figures: (each, context) => rowFigures(each, context, () => true) };
}

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
      ? [{ about: aboutRow(read, row, context), sentence: sentences.get(at) ?? null, rows: [at] }]
      : [],
  );
}

function hasShare(read: ReleasedReader, row: ReleasedRow): boolean {
  const of = ["assessed", "of", "children"].map((key) => read.at(row, key)).find((value) => value !== null);
  return of !== undefined && of !== 0;
}

function aboutRow(read: ReleasedReader, row: ReleasedRow, context: WordsContext): string {
  const name = read.text(row, "skill") === "all" ? read.text(row, "area") : labelOf(read.text(row, "skill"), context);
  const age = read.text(row, "age");
  const statement = read.text(row, "statement");
  const parts = [
    name,
    read.text(row, "band"),
    age && `by ${age} months`,
    read.text(row, "step"),
    read.text(row, "outcome"),
    statement && `summary statement ${statement}`,
  ];
  return [read.group(row), ...parts].filter((part) => part !== "").join(", ");
}

function labelOf(skill: string, { skills }: WordsContext): string {
  return skills.find(({ id }) => id === skill)?.label || skill;
}

function isArea(read: ReleasedReader, row: ReleasedRow): boolean {
  return read.text(row, "skill") === "all";
}

/** The children of all age groups together: every skill has the same, so its first skill says them. */
function childrenFigures(table: ReleasedTable, context: WordsContext): AnswerFigure[] {
  const read = readReleased(table);
  const groups = [...new Set(table.rows.map((row) => read.group(row)))];
  return groups.map((group) => {
    const own = rowsWhere(table, (row) => read.group(row) === group);
    const skill = read.text(table.rows[own[0]!]!, "skill");
    const rows = own.filter((at) => read.text(table.rows[at]!, "skill") === skill);
    const counts = rows.map((at) => read.number(table.rows[at]!, "children"));
    const known = counts.filter((count) => count !== null);
    const children = known.length === counts.length ? known.reduce((sum, count) => sum + count, 0) : null;
    const who = group === "" ? "" : `${group}: `;
    const day = isoInWords(context.asOf);
    return {
      about: group || "All children",
      sentence:
        children === null
          ? null
          : asRounded(`${who}${counted(children)} children were in the program on ${day}.`, context),
      rows,
    };
  });
}

function rowsWhere({ rows }: ReleasedTable, isMeant: (row: ReleasedRow) => boolean): number[] {
  return rows.flatMap((row, at) => (isMeant(row) ? [at] : []));
}

const IN_TIME: ShareKeys = { count: "within45", of: "of45", share: "" };

function planFigures(table: ReleasedTable, context: WordsContext): AnswerFigure[] {
  const read = readReleased(table);
  const rows = rowsWhere(table, (row) => read.text(row, "step").toLowerCase() === "plan" && read.at(row, "of45") !== 0);
  return rows.map((at) => {
    const row = table.rows[at]!;
    const words = shareWords(read, row, IN_TIME, context.level);
    const period = `made between ${isoInWords(context.from)} and ${isoInWords(context.asOf)}`;
    const about = [read.group(row), "plan within 45 days"].filter((part) => part !== "").join(", ");
    const sentence =
      words &&
      asRounded(
        `Of ${words.of} referrals ${period} that can be judged, ${words.count} had a plan within 45 days.`,
        context,
      );
    return { about, sentence, rows: [at] };
  });
}

const MET: ShareKeys = { count: "met", of: "assessed", share: "shareMet" };
const QUARTERS_A_YEAR = 4;

function changeFigures(table: ReleasedTable, context: WordsContext): AnswerFigure[] {
  const read = readReleased(table);
  const quarters = [...new Set(table.rows.map((row) => read.text(row, "quarter")))];
  const [now, before] = [quarters.at(-1), quarters.at(-1 - QUARTERS_A_YEAR)];
  if (now === undefined || before === undefined) return [];
  const earlier = new Map(
    rowsWhere(table, (row) => read.text(row, "quarter") === before).map((at) => [
      aboutRow(read, table.rows[at]!, context),
      at,
    ]),
  );
  return rowsWhere(table, (row) => read.text(row, "quarter") === now).flatMap((at): AnswerFigure[] => {
    const row = table.rows[at]!;
    const about = aboutRow(read, row, context);
    const then = earlier.get(about);
    if (then === undefined || isArea(read, row)) return [];
    const [a, b] = [table.rows[then]!, row].map((each) => shareWords(read, each, MET, context.level));
    if (!a || !b) return [{ about, sentence: null, rows: [then, at] }];
    const skill = labelOf(read.text(row, "skill"), context);
    const group = read.group(row) === "" ? "" : `${read.group(row)}: `;
    const said = `${group}"${skill}" was met by ${a.count} of ${a.of} children checked at the end of ${before}${a.percent}, and by ${b.count} of ${b.of} at the end of ${now}${b.percent}.`;
    return [{ about, sentence: asRounded(said, context), rows: [then, at] }];
  });
}
