import type { Settings } from "../../settings/settings";
import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import { plural } from "../../words/numbers";
import type { PreparedRelease, Refusal } from "../prepared";
import type { AnsweredQuestion, WordsContext } from "../words/words-context";
import { type Attempt, attemptsOf, combined } from "./attempts";
import type { Question } from "./questions";

/** What became of one attempt: how many of the figures that each question wants it shows; nothing where it was refused. */
export interface Tried extends Attempt {
  readonly counts: readonly FiguresShown[];
}

interface FiguresShown {
  readonly name: string;
  readonly shown: number;
  readonly wanted: number;
}

/** The release that shows most, as near to the questions as that goes, and all that was tried on the way to it. */
export interface Answer {
  readonly answered: readonly AnsweredQuestion[];
  /** The attempt that it comes from. */
  readonly best: Tried;
  readonly release: PreparedRelease;
  readonly tried: readonly Tried[];
}

export interface AnswerTools {
  /** Prepares a release of these tables under other settings of the same records. */
  readonly prepare: (tables: readonly ReleasableId[], settings: Settings) => PreparedRelease | Refusal;
  readonly contextOf: (release: PreparedRelease, settings: Settings) => WordsContext;
}

/**
 * Tries the questions as asked, then with longer periods, fewer age groups and no grouping, then with what showed more of
 * each, until every figure shows. All questions are answered by one release, so that together they give nothing away. Each
 * attempt is a whole release, protected and attacked: what is said to show more was seen to show more.
 *
 * @returns the refusal of the first attempt where none may leave
 */
export function answerQuestions(
  questions: readonly Question[],
  settings: Settings,
  tools: AnswerTools,
): Answer | Refusal {
  const tables = tablesOf(questions);
  const { singles, widest } = attemptsOf(tables, settings);
  const search = new Search(questions, tables, tools);
  for (const attempt of singles) if (search.ends(attempt)) return search.found();
  const better = combined(settings, search.improving());
  if (better !== null && search.ends(better)) return search.found();
  if (widest !== null) search.ends(widest);
  return search.found();
}

/** The tables that answer the questions, each once, in the order of the catalogue. */
export function tablesOf(questions: readonly Question[]): ReleasableId[] {
  const order = Object.keys(TABLE_CATALOGUE);
  const tables = [...new Set(questions.map(({ table }) => table))];
  return tables.sort((one, other) => order.indexOf(one) - order.indexOf(other));
}

/** The figures of a release that answer the questions. */
export function answersIn(
  questions: readonly Question[],
  release: Pick<PreparedRelease, "tables">,
  context: WordsContext,
): AnsweredQuestion[] {
  return questions.map(({ id, name, asks, table, figures }) => {
    const own = release.tables.find((each) => each.id === table);
    return { id, name, asks, table, figures: own ? figures(own, context) : [] };
  });
}

class Search {
  private readonly tried: Tried[] = [];
  private readonly seen = new Set<string>();
  private best: Omit<Answer, "tried"> | null = null;
  private refusal: Refusal | null = null;

  constructor(
    private readonly questions: readonly Question[],
    private readonly tables: readonly ReleasableId[],
    private readonly tools: AnswerTools,
  ) {}

  /** Tries one way, and says whether every figure shows, so that nothing is left to try. The same way is tried once. */
  ends(attempt: Attempt): boolean {
    if (this.seen.has(attempt.options)) return false;
    this.seen.add(attempt.options);
    const release = this.tools.prepare(this.tables, attempt.settings);
    if ("places" in release) {
      this.refusal ??= release;
      this.tried.push({ ...attempt, counts: [] });
      return false;
    }
    const context = this.tools.contextOf(release, attempt.settings);
    const answered = answersIn(this.questions, release, context);
    const best: Tried = { ...attempt, counts: answered.map(shownOf) };
    this.tried.push(best);
    if (this.best === null || this.score(best) > this.score(this.best.best)) this.best = { answered, best, release };
    return best.counts.every(({ shown, wanted }) => wanted > 0 && shown === wanted);
  }

  /** Of each thing that may change, the smallest change that showed most, where it showed more than the question as asked. */
  improving(): Tried[] {
    const asked = this.tried[0] ? this.score(this.tried[0]) : -Infinity;
    return (["edges", "from", "by"] as const).flatMap((change) => {
      const own = this.tried.filter((each) => each.change === change && this.score(each) > asked);
      const most = Math.max(...own.map((each) => this.score(each)));
      return own.find((each) => this.score(each) === most) ?? [];
    });
  }

  private score(tried: Tried): number {
    return scoreOf(tried, this.tried[0]);
  }

  found(): Answer | Refusal {
    return this.best === null ? this.refusal! : { ...this.best, tried: this.tried };
  }
}

function shownOf({ name, figures }: AnsweredQuestion): FiguresShown {
  return { name, shown: figures.filter(({ sentence }) => sentence !== null).length, wanted: figures.length };
}

/**
 * Figures shown, of as many as the question had when it was asked: fewer age groups have fewer figures, and 2 of 2 are less
 * than 3 of 4. Every question counts the same, however many figures it has.
 */
function scoreOf({ counts }: Tried, asked: Tried | undefined): number {
  if (counts.length === 0) return -Infinity;
  return counts.reduce((sum, { shown, wanted }, at) => {
    const of = asked?.counts[at]?.wanted || wanted;
    return sum + (wanted === 0 ? -1 : shown / of);
  }, 0);
}

/** Whether an attempt shows more than the questions as they were asked. */
export function showsMore(one: Tried, asked: Tried): boolean {
  return scoreOf(one, asked) > scoreOf(asked, asked);
}

/** `for the 12 months from October 1, 2025: shown.`; the command line gives the options too. */
export function triedInWords({ words, options, counts }: Tried, minimumCell: number, withOptions = false): string {
  const how = withOptions && options !== "" ? `${words} (${options})` : words;
  if (counts.length === 0) return `${how}: not safe to release.`;
  const [only, ...others] = counts;
  if (only && others.length === 0) return `${how}: ${figuresInWords(only, minimumCell)}.`;
  return `${how}: ${counts.map((each) => `${each.name} – ${figuresInWords(each, minimumCell)}`).join("; ")}.`;
}

function figuresInWords({ shown, wanted }: FiguresShown, minimumCell: number): string {
  if (wanted === 0) return "nothing to show";
  if (shown === 0) return `held back at threshold ${minimumCell}`;
  return shown === wanted ? "shown" : `${shown} of ${plural(wanted, "figure", "figures")} shown`;
}
