import { CELL, type Grid } from "../../workbook/cells";
import type { WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { parseDateText } from "../cells/date-text";
import { resultOf } from "../cells/result-words";
import { displayOf, isBlankText, wordKey } from "../cells/words";
import type { WordMeaning } from "../corrections/settled";
import type { Block } from "../headings/block";
import { legendOf } from "./legend";
import type { WordTaken } from "./understanding";

const LONGEST_WORD = 16;
const MOST_PARTS = 3;
const FEWEST_CELLS = 2;
const MOST_WORDS = 24;
/** A number that is a score, not a day: days since 1900 of a living child have five digits. */
const LARGEST_SCORE = 100;
const TICKS = new Set(["✓", "✔", "☑", "√", "✅"]);
const CROSSES = new Set(["✗", "✘", "☒", "×", "✖", "x"]);

/** What stands among results, with how many cells: words that everyone knows, and others. */
export interface WordCounts {
  readonly known: ReadonlyMap<string, number>;
  readonly others: ReadonlyMap<string, { readonly text: string; readonly cells: number }>;
  /** Blank cells of grids beside the day of a visit. */
  readonly blanks: number;
  readonly dates: number;
}

/** The words that are asked, and how many cells hold another text that is shown nowhere. */
export interface WordsMet {
  readonly words: readonly WordTaken[];
  readonly notShown: number;
}

/**
 * The words met among results that are not among those that everyone knows. A word qualifies only where it is short,
 * repeated or a known word with a mark (`Y?`), and no id, name or group of a child: free text never does.
 *
 * @param settled - what a person settled, by `wordKey`
 * @param never - keys of ids and names, which are never shown
 */
export function wordsMet(
  workbook: WorkbookIn,
  blocks: readonly Block[],
  settled: (key: string) => WordMeaning | null | undefined,
  never: ReadonlySet<string>,
): WordsMet {
  const counts = countWords(blocks);
  const proven = provenWords(workbook, counts);
  const isKnown = (key: string) => counts.known.has(key) || counts.others.has(key);
  const words = [...counts.others]
    .filter(
      ([key, { text, cells }]) =>
        settled(key) !== undefined || proven.has(key) || qualifies(text, cells, key, never, isKnown),
    )
    .sort(([, a], [, b]) => b.cells - a.cells)
    .slice(0, MOST_WORDS)
    .map(([key, { text, cells }]) => wordTaken(text, cells, settled(key), proven.get(key)));
  const all = sum([...counts.others.values()].map(({ cells }) => cells));
  return {
    words: [...words, ...blankTaken(counts, words, settled(""))],
    notShown: all - sum(words.map(({ cells }) => cells)),
  };
}

export type ProvenWords = ReadonlyMap<string, { readonly means: WordMeaning; readonly why: string }>;

/** Words whose meaning a stated legend or their own columns prove, by `wordKey`. */
export function provenWords(workbook: WorkbookIn, { known, others }: WordCounts): ProvenWords {
  const legend = others.size > 0 ? legendOf(workbook) : new Map<string, WordMeaning>();
  const has = (words: ReadonlySet<string>) => [...others.keys(), ...known.keys()].some((key) => words.has(key));
  const proven = new Map<string, { means: WordMeaning; why: string }>();
  for (const key of others.keys()) {
    const said = legend.get(key);
    if (said) proven.set(key, { means: said, why: "The workbook says so itself." });
    else if (CROSSES.has(key) && key !== "x" && has(TICKS))
      proven.set(key, { means: "not met", why: "It is beside ticks." });
  }
  return proven;
}

/** Counts the words in the places for results of every block. */
export function countWords(blocks: readonly Block[]): WordCounts {
  const known = new Map<string, number>();
  const written = new Map<string, Map<string, number>>();
  let blanks = 0;
  let dates = 0;
  for (const block of blocks) {
    for (const column of resultColumns(block)) {
      const counts = countColumn(block, column);
      blanks += counts.blanks;
      dates += counts.dates;
      for (const [text, cells] of counts.texts) {
        const key = wordKey(text);
        if (resultOf(text) !== null) known.set(key, (known.get(key) ?? 0) + cells);
        else
          written.set(
            key,
            (written.get(key) ?? new Map<string, number>()).set(text, (written.get(key)?.get(text) ?? 0) + cells),
          );
      }
    }
  }
  const others = new Map(
    [...written].map(([key, ways]) => [key, { text: mostWritten(ways), cells: sum(ways.values()) }]),
  );
  return { known, others, blanks, dates };
}

function resultColumns(block: Block): number[] {
  if (block.wide.length > 0) return block.wide.map(({ column }) => column);
  return block.columns.has("result") ? [block.columns.get("result") as number] : [];
}

function countColumn(block: Block, column: number) {
  const { grid } = block;
  const cells = grid.columns[column];
  const visit = block.wide.length > 0 ? grid.columns[block.columns.get("date") ?? -1] : undefined;
  const byString = new Map<number, number>();
  const texts = new Map<string, number>();
  let blanks = 0;
  let dates = 0;
  const add = (text: string) => texts.set(text, (texts.get(text) ?? 0) + 1);
  for (const row of block.rows) {
    const kind = cells?.kinds[row] ?? CELL.empty;
    const value = cells?.values[row] as number;
    if (kind === CELL.text) byString.set(value, (byString.get(value) ?? 0) + 1);
    else if (kind === CELL.boolean) add(value === 1 ? "TRUE" : "FALSE");
    else if (kind === CELL.number && Math.abs(value) <= LARGEST_SCORE) add(String(value));
    else if (kind === CELL.date) dates += 1;
    else if (kind === CELL.empty && (visit?.kinds[row] ?? CELL.empty) !== CELL.empty) blanks += 1;
  }
  for (const [index, count] of byString) {
    const text = displayOf(grid.strings[index] as string);
    if (isBlankText(text)) continue;
    if (parseDateText(text).kind === "none") texts.set(text, (texts.get(text) ?? 0) + count);
    else dates += count;
  }
  return { texts, blanks, dates };
}

function qualifies(
  text: string,
  cells: number,
  key: string,
  never: ReadonlySet<string>,
  isKnown: (key: string) => boolean,
): boolean {
  if (text.length > LONGEST_WORD || never.has(key)) return false;
  if (cells < FEWEST_CELLS && !saysLittle(key, isKnown)) return false;
  return text.split(/\s+/).length <= MOST_PARTS && !/\d{2}|@/.test(text);
}

/** One sign, or a word that other cells have, with a mark beside it: it can name nobody. */
function saysLittle(key: string, isKnown: (key: string) => boolean): boolean {
  const bare = key.replace(/[^\p{L}\p{N}]+/gu, "");
  return [...key].length === 1 || bare === "" || (bare !== key && (isKnown(bare) || resultOf(bare) !== null));
}

function wordTaken(
  text: string,
  cells: number,
  settled: WordMeaning | null | undefined,
  proven: { readonly means: WordMeaning; readonly why: string } | undefined,
): WordTaken {
  if (settled) return { word: text, cells, means: settled, why: "As you settled it.", doubtful: false };
  if (proven) return { word: text, cells, ...proven, doubtful: false };
  return { word: text, cells, means: null, why: "Nothing in the workbook says what it means.", doubtful: true };
}

/** Ticks with blanks beside them, and nothing that says "not met": what does a blank mean? */
function blankTaken(
  { known, blanks }: WordCounts,
  words: readonly WordTaken[],
  settled: WordMeaning | null | undefined,
): WordTaken[] {
  const keys = [...known.keys(), ...words.map(({ word }) => wordKey(word))];
  const scores = keys.filter((key) => /^\d+$/.test(key));
  const isTick = (key: string) =>
    TICKS.has(key) || key === "x" || key === "true" || (key === "1" && scores.length === 1);
  const isTickSheet = keys.some(isTick);
  const saysNot =
    [...known.keys()].some((key) => resultOf(key) === 0) || words.some(({ means }) => means === "not met");
  if (settled) return [{ word: "", cells: blanks, means: settled, why: "As you settled it.", doubtful: false }];
  if (!isTickSheet || saysNot || blanks === 0) return [];
  return [
    {
      word: "",
      cells: blanks,
      means: "leave out",
      why: "A blank beside ticks usually means not checked.",
      doubtful: true,
    },
  ];
}

function mostWritten(ways: ReadonlyMap<string, number>): string {
  return [...ways].reduce((best, each) => (each[1] > best[1] ? each : best))[0];
}

function sum(values: Iterable<number>): number {
  return [...values].reduce((total, each) => total + each, 0);
}

/** Keys of the cells of a column, to be kept out of what is shown. */
export function keysOfColumn(grid: Grid, column: number | undefined, rows: Int32Array): string[] {
  return column === undefined ? [] : Array.from(rows, (row) => wordKey(shownText(grid, row, column)));
}
