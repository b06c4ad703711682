/**
 * What the words of the figures mean, each written once. The sheet Method prints them all; notes, footnotes and help quote
 * them by their term. METHOD.md has them in full.
 */
export const DEFINITIONS = {
  "Chronological age":
    "Counted from the day of birth. Completed months are the largest number of calendar months that fit; adding a month stops at the month's last day. Decimal months add the share of the running month that has passed.",
  "Corrected age":
    "Counted from the day the baby was due (birth plus 280 days less the gestation), for children born before the gestation set, until the age set; from then on the chronological age. Where correcting stops the age jumps, and a status that changed only for that reason says so. Source: AAP Committee on Fetus and Newborn, Pediatrics 2004;114:1362-1364.",
  "In the program": "Enrolled by the day and not left by it, over all enrollments of the child.",
  "Met between two checks":
    "A skill first recorded as met on day M, and last checked without it on day L, was met after L and by M. With no earlier check it was already met at the first check: met after birth and by M. A skill never recorded as met was not met by its last check. A skill that was never checked says nothing.",
  "Where a child's skill is counted":
    "Each child in the program is counted exactly once for each skill: already met at first check, met since, not yet met, needs a recheck, lost, or not checked. Emerging counts as not yet met. Needs a recheck: not met, and last checked longer ago than the recheck limit. Lost includes a possible loss, to confirm.",
  "Up-to-date check":
    "Met, or last checked within the recheck limit. Up-to-date skill checks are the children less those not checked and those who need a recheck.",
  Lost: "A result below met after a met, unless a later met restores it, or a skill that replaces it is met. Two observers who disagree on one day count as not met for that day and are listed.",
  "Expected window":
    "The ages at which most children in the source study start doing this. Before: age below its opening. Within: from the opening to below the close. Past: at the close or above. Where a source gives no opening, none is made up.",
  "Share met, with its confidence interval":
    "Met, of up-to-date checks. Interval: Wilson (1927), as compared by Newcombe, Stat Med 1998;17:857-872. The lowest and highest possible share count every child not known as without the skill, and as with it. Rows over several skills count skill checks and have no interval, because the skills of one child go together.",
  "Age when children met each skill":
    "Where every age is exact or open-ended: Kaplan and Meier (1958), with Greenwood's variance and log-log intervals. Where visits only bracket the day: the nonparametric maximum likelihood estimate of Turnbull (1976), proved best by its optimality conditions (Gentleman and Geyer 1994). Its mass is spread evenly within each interval, and nothing is read beyond the last finite one. Estimates are made in whole days and printed in months of 30.4375 days, the convention of the WHO growth standards.",
  "Likely range of an age":
    "A percentile bootstrap over children, from the seed printed below. It is approximate: for this estimate the bootstrap is a convention, not a theorem.",
  "Share by the close, and the source's share":
    "The share of children who have met the skill by the close of its window, beside the share that the window's source expects. WHO windows run from the 1st to the 99th percentile (WHO Multicentre Growth Reference Study Group, Acta Paediatr Suppl 2006;450:86-95). CDC/AAP ages are those by which 75% or more of children would be expected to do it (Zubler et al., Pediatrics 2022;149(3):e2021052138). Common practice has no source and no expected share. The kinds are never added up.",
  Agreement:
    "Percent of pairs of observers of one child, skill and day who recorded the same result, and Cohen's kappa (Cohen 1960) over the four results.",
} as const;

export type DefinedTerm = keyof typeof DEFINITIONS;
