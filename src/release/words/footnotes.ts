import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "./days";
import { ruleInWords } from "./rule-words";
import type { WordsContext } from "./words-context";

/** Population, period, source, exclusions, missing, rule: what a figure of the table needs beside it wherever it goes. */
export function footnoteOf({ id, population }: ReleasedTable, context: WordsContext): string {
  return [
    `Who is counted: ${lowered(population)}.`,
    periodOf(id, context),
    "Source: the program's own records.",
    "Left out: rows of the records that cannot be used. The program has the list.",
    `Missing: ${MISSING[id]}`,
    ruleInWords(context.rule),
  ].join(" ");
}

/** How the figures of the table come about, short enough to stand below it. */
export function methodNoteOf({ id }: ReleasedTable): string {
  return `Method: ${METHOD[id]} Ages are corrected for births before 37 weeks as the program's settings say (usual: until 24 months; AAP, Pediatrics 2004;114:1362-1364).`;
}

function periodOf(id: ReleasableId, { from, asOf }: WordsContext): string {
  const day = isoInWords(asOf);
  return TABLE_CATALOGUE[id].when === "at a date"
    ? `Figures as of ${day}.`
    : `Period: ${isoInWords(from)} to ${day}; figures as of ${day}.`;
}

function lowered(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}

const NOT_IN_SHARE =
  "children not checked, or last checked too long ago, are in columns of their own and in no share met.";

const MISSING: Readonly<Record<ReleasableId, string>> = {
  "met-by-band": `${NOT_IN_SHARE} The lowest and highest possible share say what they could change.`,
  "met-by-band-left": NOT_IN_SHARE,
  "reached-by-age":
    "children for whom it is not known are in a column of their own. The lowest and highest possible share say what they could change.",
  "age-when-met": "children never checked for the skill are not in its row.",
  referrals: "referrals made on a day when the child was not in the program do not count.",
  "referral-steps": "steps that are still to come count as not yet taken. Each step has its own denominator.",
  ratings: "children who left without a rating are in no category, and may differ from those who have one.",
  trend: "children not checked, or last checked too long ago, at the end of a quarter are in no share of it.",
};

const WILSON = "confidence intervals are Wilson's (Wilson, J Am Stat Assoc 1927;22:209-212).";

const METHOD: Readonly<Record<ReleasableId, string>> = {
  "met-by-band": `share met is met divided by checked; ${WILSON} Skill checks added over an area carry no interval, because the skills of one child hang together.`,
  "met-by-band-left": `share met is met divided by checked; ${WILSON}`,
  "reached-by-age":
    "the lowest possible share is met divided by all children; the highest possible share takes those not known as having met it.",
  "age-when-met":
    "visits only bracket the day on which a skill was met; ages come from the nonparametric maximum likelihood estimate for intervals (Turnbull, J R Stat Soc B 1976;38:290-295), to the whole month.",
  referrals:
    "expected is what the program's own rates by age group give for the time in the program; confidence intervals of observed / expected are exact (Garwood, Biometrika 1936;28:437-442).",
  "referral-steps": `${WILSON.replace("confidence intervals", "confidence intervals of shares")} The 45 days are those of 34 CFR 303.310.`,
  ratings: "progress categories a to e and the two summary statements of the federal Part C child-outcome indicator.",
  trend: `each quarter is counted with the skills and settings of today; ${WILSON}`,
};
