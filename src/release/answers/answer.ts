import type { Settings } from "../../settings/settings";
import type { ReleasableId } from "../../tables/table";
import type { PreparedRelease, Refusal } from "../prepared";
import type { WordsContext } from "../words/words-context";
import { type Attempt, attemptsOf } from "./attempts";
import { type AnswerFigure, type Question, QUESTIONS, type QuestionId } from "./questions";

/** What became of one attempt: how many of the figures that answer the question it shows. */
export interface Tried extends Attempt {
  readonly shown: number;
  readonly wanted: number;
}

/** The answer that shows most, as near to the question as that goes, and all that was tried on the way to it. */
export interface Answer {
  readonly asks: string;
  readonly table: ReleasableId;
  readonly figures: readonly AnswerFigure[];
  readonly settings: Settings;
  readonly release: PreparedRelease;
  readonly tried: readonly Tried[];
}

export interface AnswerTools {
  /** Prepares a release of one table under other settings of the same records. */
  readonly prepare: (table: ReleasableId, settings: Settings) => PreparedRelease | Refusal;
  readonly contextOf: (release: PreparedRelease, settings: Settings) => WordsContext;
  readonly skills: readonly string[] | null;
}

/**
 * Tries the question as asked, then with longer periods, fewer age groups and no grouping, until every figure of it
 * shows. Each attempt is a whole release, protected and attacked: what is said to show more was seen to show more.
 *
 * @returns the refusal of the first attempt where none may leave
 */
export function answerQuestion(id: QuestionId, settings: Settings, tools: AnswerTools): Answer | Refusal {
  const question = QUESTIONS[id];
  const attempts = attemptsOf(question.table, settings);
  const tried: Tried[] = [];
  let best: Answer | null = null;
  let refusal: Refusal | null = null;
  for (const attempt of attempts) {
    const release = tools.prepare(question.table, attempt.settings);
    if ("places" in release) {
      refusal ??= release;
      tried.push({ ...attempt, shown: 0, wanted: 0 });
      continue;
    }
    const figures = figuresOf(question, release, attempt, tools);
    const shown = figures.filter(({ sentence }) => sentence !== null).length;
    tried.push({ ...attempt, shown, wanted: figures.length });
    if (best === null || shareShown(figures) > shareShown(best.figures)) {
      best = { asks: question.asks, table: question.table, figures, settings: attempt.settings, release, tried };
    }
    if (figures.length > 0 && shown === figures.length) break;
  }
  return best ?? refusal!;
}

function figuresOf(
  { table, figures }: Question,
  release: PreparedRelease,
  { settings }: Attempt,
  { contextOf, skills }: AnswerTools,
): AnswerFigure[] {
  const context = contextOf(release, settings);
  return release.tables.filter(({ id }) => id === table).flatMap((each) => figures(each, context, skills));
}

/** Nothing to show is less than anything that shows. */
function shareShown(figures: readonly AnswerFigure[]): number {
  return figures.length === 0 ? -1 : figures.filter(({ sentence }) => sentence !== null).length / figures.length;
}

/** `July 1 to September 30: 1 of 4 figures show.`, one line an attempt. */
export function triedInWords(tried: readonly Tried[], minimumCell: number): string[] {
  return tried.map(({ words, options, shown, wanted }) => {
    const how = options === "" ? words : `${words} (${options})`;
    if (wanted === 0) return `${how}: nothing to show.`;
    if (shown === 0) return `${how}: held back at threshold ${minimumCell}.`;
    return shown === wanted ? `${how}: shown.` : `${how}: ${shown} of ${wanted} figures shown.`;
  });
}
