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
        `These are figures of a program that follows infants and toddlers skill by skill, for the period ${isoInWords(from)} to ${isoInWords(asOf)}.`,
        `${plural(tables.length, "table", "tables")}: ${tables.map(({ title }) => title).join("; ")}.`,
        "The file has values only: no formula, no link, nothing hidden, and nothing about a single child.",
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
  "Every earlier release in the release log was taken into account. Figures that were passed on in other ways are not known here.";
const READING =
  "Each percent comes with its two numbers: how many, of how many. Who is counted, the period, what is missing and the method are below each table. The sentences say each figure in words.";

function preparation({ rule, tables }: PreparedRelease): string[] {
  const { counts, heldBack } = countsPrinted(tables);
  const held = {
    hide: `Of ${counted(counts)} counts, ${counted(heldBack)} are held back. They were chosen so that as little as possible is lost, over all tables, totals, percents and earlier releases together.`,
    round: `All ${counted(counts)} counts are rounded so that they still add up.`,
    ranges: `All ${counted(counts)} counts are given as ranges.`,
  };
  return [
    held[rule.method],
    "Then the release was tested: could a reader from outside, who knows every figure shown and the rule, work out a small count? For each small count there is another table that agrees with everything shown and has zero, or enough, in its place.",
    "Children of one family count as one.",
  ];
}
