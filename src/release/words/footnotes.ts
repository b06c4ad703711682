import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "./days";
import { ruleInWords } from "./rule-words";
import type { WordsContext } from "./words-context";

/** Population, period, source, exclusions, missing, rule: what a figure of the table needs beside it wherever it goes. */
export function footnoteOf({ id, population }: ReleasedTable, context: WordsContext): string {
  return [
    `Population: ${population}.`,
    periodOf(id, context),
    "Source: the program's own records, as they stood when this was prepared.",
    "Left out: rows of the records that cannot be used; the program has the list of them.",
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

const MISSING: Readonly<Record<ReleasableId, string>> = {
  "met-by-band":
    "children out of date or not assessed for a skill stand in columns of their own and in no share met; lowest and highest possible share say what they could change.",
  "met-by-band-left":
    "children out of date or not assessed on their last day stand in columns of their own and in no share met.",
  "reached-by-age":
    "children of whom it is not known stand in a column of their own; lowest and highest possible share say what they could change.",
  "age-when-met": "children never observed for the skill are not in its row.",
  referrals: "referrals made on a day on which the child was not followed do not count.",
  "referral-steps": "steps that are still to come are not yet taken; each step has its own denominator.",
  ratings: "children who left unrated are not in the categories, and may differ from those who are rated.",
  trend: "children out of date or not assessed at the end of a quarter are in no share of it.",
};

const WILSON = "limits are Wilson's (Wilson, J Am Stat Assoc 1927;22:209-212).";

const METHOD: Readonly<Record<ReleasableId, string>> = {
  "met-by-band": `share met is met of assessed; ${WILSON} Child-skills carry no limits, because the skills of one child hang together.`,
  "met-by-band-left": `share met is met of assessed; ${WILSON}`,
  "reached-by-age":
    "lowest possible share is met of all children, highest possible share takes those not known as having met it.",
  "age-when-met":
    "visits only bracket the day a skill was met; ages come from the nonparametric maximum likelihood estimate for intervals (Turnbull, J R Stat Soc B 1976;38:290-295), to the whole month.",
  referrals:
    "expected is what the program's own rates by age band give for the time followed; limits of observed / expected are exact (Garwood, Biometrika 1936;28:437-442).",
  "referral-steps": `${WILSON.replace("limits", "limits of shares")} Median days by Kaplan-Meier; 45 days: 34 CFR 303.310.`,
  ratings: "progress categories a to e and the two summary statements of the federal Part C child-outcome indicator.",
  trend: `each quarter is counted with the skills and settings of today; ${WILSON}`,
};
