import type { DateSystem } from "../src/age/serial";
import type { AnswerCell } from "./answer";
import { currentDateSystem } from "./date-system";
import { KnownRanges } from "./known-ranges";

type Rows<Cell> = readonly (readonly Cell[])[];

/** Room for the answers of a whole workbook of formulas, in some tens of megabytes. */
const MOST_CELLS = 1_000_000;
/** What an answer takes beside its cells, as so many cells. */
const CELLS_OF_AN_ANSWER = 50;

/** One for all memories of a thread: formulas ask about the same tables. */
const ranges = new KnownRanges();

/**
 * Answers by what was asked: a sheet asks the same questions again whenever it recalculates. A question is known again by
 * the content of its arguments, so that an edit is always seen.
 */
export class Memory<Cell> {
  private readonly answers = new Map<string, Rows<Cell>>();
  private kept = 0;

  /** The key of a question, under which its answer is kept. */
  keyOf(name: string, args: readonly unknown[], dateSystem: DateSystem): string {
    return JSON.stringify([name, dateSystem, args.map((value) => ranges.wordOf(value))]);
  }

  at(key: string): Rows<Cell> | undefined {
    const answer = this.answers.get(key);
    if (answer) this.keep(key, answer);
    return answer;
  }

  keep(key: string, answer: Rows<Cell>): void {
    this.forget(key);
    this.answers.set(key, answer);
    this.kept += cellsOf(answer);
    this.makeRoom();
  }

  /** The answer that was not asked for the longest goes first. */
  private makeRoom(): void {
    for (const oldest of this.answers.keys()) {
      if (this.kept <= MOST_CELLS) return;
      this.forget(oldest);
    }
  }

  private forget(key: string): void {
    const answer = this.answers.get(key);
    if (!answer) return;
    this.kept -= cellsOf(answer);
    this.answers.delete(key);
  }
}

const memory = new Memory<AnswerCell>();
let isElsewhere = false;

/** In the worker nothing is kept: whoever calls it remembers what it answered. */
export function rememberElsewhere(): void {
  isElsewhere = true;
}

/** The rows of a function for these arguments, worked out once. */
export function remembered(name: string, args: readonly unknown[], rows: () => Rows<AnswerCell>): Rows<AnswerCell> {
  if (isElsewhere) return rows();
  const key = memory.keyOf(name, args, currentDateSystem());
  const known = memory.at(key);
  if (known) return known;
  const answer = rows();
  memory.keep(key, answer);
  return answer;
}

function cellsOf(rows: Rows<unknown>): number {
  return CELLS_OF_AN_ANSWER + rows.length * (rows[0]?.length ?? 0);
}
