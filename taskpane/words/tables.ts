/** One line on what each table answers. A table without one goes by its name alone. */
const ABOUT: Readonly<Record<string, string>> = {
  "met-by-band": "Of the children followed on the as-of date, how many have met each skill, by age",
  "met-by-band-left": "The same for children who left in the period, on their last day",
  "reached-by-age": "How many children had met each skill by each age",
  "age-when-met": "At which age half of the children met each skill, with limits, beside its window",
  "since-enrolment": "How long after enrolment children gained each skill",
  referrals: "Referrals by site, area, age and quarter, with what would be expected",
  "referral-scan": "Places and months with more referrals than chance explains",
  "referral-steps": "How far referrals got, and how long the steps took",
  ratings: "Entry and exit ratings, and the two summary statements",
  trend: "The last eight quarters under one definition",
  agreement: "How often two observers of one day agreed",
  "skill-status": "Where each child stands with each skill",
  caseload: "Each therapist’s children in order, with reasons",
  "recheck-plan": "What each therapist should look at again",
};

export function aboutTable(id: string): string {
  return Object.hasOwn(ABOUT, id) ? (ABOUT[id] as string) : "";
}

export const INTERNAL_WARNING =
  "Internal: a row stands for a single child. Keep it inside the program; it is never part of a release.";
