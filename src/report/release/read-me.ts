import type { PreparedRelease } from "../../release/prepared";
import { isoInWords } from "../../release/words/days";
import { DECISION, NOT_A_DIAGNOSIS, ruleInWords, symbolInWords } from "../../release/words/rule-words";
import { countsPrinted } from "./counts-printed";
import { counted, plural } from "../../words/numbers";

/** A heading and its sentences. */
export interface Passage {
  readonly heading: string;
  readonly lines: readonly string[];
}

/**
 * What whoever opens a release must know first. It tells how many figures are held back, and never how many of them are
 * small: who knew that all of them are could tell what each one is. Nor does it name groups of which all or none have
 * something: those are for whoever releases, since the figure may be held back.
 */
export function readMeFirst(release: PreparedRelease): Passage[] {
  const { asOf, from, rule, tables, notCovered } = release;
  return [
    {
      heading: "What this is",
      lines: [
        `Figures of a program that follows infants and toddlers skill by skill, as of ${isoInWords(asOf)}; period ${isoInWords(from)} to ${isoInWords(asOf)}.`,
        `${plural(tables.length, "table", "tables")}: ${tables.map(({ title }) => title).join("; ")}.`,
        "Values only: no formula, no link, nothing hidden, and nothing about a single child.",
      ],
    },
    { heading: "How it was prepared", lines: [ruleInWords(rule), ...preparation(release)] },
    { heading: "What * means", lines: [symbolInWords(rule)] },
    { heading: "Who decides", lines: [DECISION] },
    { heading: "What is not covered", lines: notCovered.length === 0 ? [NOTHING_LEFT] : notCovered },
    { heading: "How to read it", lines: [READING, NOT_A_DIAGNOSIS] },
  ];
}

const NOTHING_LEFT =
  "Every earlier release of the ledger that was given is tied to this one by equations. What was passed on in other ways is not known here.";
const READING =
  "A percent stands with its two numbers: how many, of how many. Each table has its population, period, missing and method below its rows; the sheet or file of sentences says each figure in words.";

function preparation({ rule, tables }: PreparedRelease): string[] {
  const { counts, heldBack } = countsPrinted(tables);
  const held = {
    hide: `Of ${counted(counts)} counts, ${counted(heldBack)} are held back. Which, was chosen over all tables, totals, percents, limits and earlier releases of the ledger at once, so that little is lost.`,
    round: `All ${counted(counts)} counts are rounded so that they still add up.`,
    ranges: `All ${counted(counts)} counts are given as ranges.`,
  };
  return [
    held[rule.method],
    "Then it was attacked as an outsider would, who knows every figure shown, the rule, and that counts are whole: for every small count another table was found that agrees with all that is shown and holds none, or enough, in its place.",
    "Children of one family count as one.",
  ];
}
