import { footnoteOf } from "../../release/words/footnotes";
import type { ReleasedTable } from "../../release/release-table";
import type { AnsweredQuestion, WordsContext } from "../../release/words/words-context";
import type { Passage } from "./read-me";

/** Each question with its figures in sentences, what of it is held back, and the footnote that goes with them. */
export function answerPassages(tables: readonly ReleasedTable[], context: WordsContext): Passage[] {
  return (context.answered ?? []).map((answered) => {
    const table = tables.find(({ id }) => id === answered.table);
    return {
      heading: answered.asks,
      lines: [...saidOf(answered), ...(table ? [footnoteOf(table, context)] : [])],
    };
  });
}

/** What a question is answered with: a figure a sentence, then what is held back, named and without a count. */
export function saidOf({ figures }: AnsweredQuestion): string[] {
  if (figures.length === 0) return ["The records have no such figure."];
  const said = figures.flatMap(({ sentence }) => sentence ?? []);
  const held = figures.filter(({ sentence }) => sentence === null).map(({ about }) => about);
  if (held.length === 0) return said;
  const named = held.length <= NAMED_AT_MOST ? held.join("; ") : `${held.length} of ${figures.length} figures`;
  return [...said, `Held back: ${named}.`];
}

const NAMED_AT_MOST = 12;
