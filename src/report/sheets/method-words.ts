/** The definitions that the figures rest on, for the method sheet; METHOD.md has them in full. */
export const DEFINITIONS: readonly (readonly [term: string, meaning: string])[] = [
  [
    "Chronological age",
    "Counted from the day of birth. Completed months: the largest number of calendar months that fit, a month addition ending at the month's last day. Decimal months add the share of the running month that has passed.",
  ],
  [
    "Corrected age",
    "Counted from the day the baby was due (birth plus 280 days less the gestation), for children born before the gestation set, until the age set; from then on the chronological age. Where it stops the age jumps, and a status that changed only for that says so. Source: AAP Committee on Fetus and Newborn, Pediatrics 2004;114:1362-1364.",
  ],
  [
    "Met between two looks",
    "A skill first seen as met on day M, and last looked for without it on day L, was met after L and by M. With no look before, it was had at first look: met after birth and by M. A skill never seen as met was not met by its last look. A skill never looked for says nothing.",
  ],
  [
    "Boxes",
    "Each child followed stands in exactly one box for each skill: had at first look, gained here, not met (emerging too), out of date (not met, and the look is older than the limit for a re-check), lost (or lost to confirm), not assessed.",
  ],
  [
    "Lost",
    "A result below met after a met, unless a later met restores it, or a skill that replaces it is met. Two observers who disagree on one day count as not met for that day and are listed.",
  ],
  [
    "Window",
    "The expected window of a skill, in months, with its source. Before: age below its opening; in: from the opening to below the close; past: at the close or above. Where a source gives no opening, none is made up.",
  ],
  ["Followed", "Enrolled by the day and not left by it, over all enrolments of the child."],
  [
    "Share met, with limits",
    "Met of assessed, where assessed leaves out children not assessed and out of date. Limits: Wilson (1927), as compared by Newcombe, Stat Med 1998;17:857-872. Lowest and highest possible share take every child not known as without the skill, and as with it. Rows of child-skills carry no limits, because the skills of one child are not independent.",
  ],
  [
    "Age when met",
    "Where every age is exact or open-ended: Kaplan and Meier (1958), with Greenwood's variance and log-log limits. Where visits only bracket the day: the nonparametric maximum likelihood estimate of Turnbull (1976), proved best by its optimality conditions (Gentleman and Geyer 1994). Its mass is spread evenly within each interval, and nothing is read beyond the last finite one. Estimates are made in whole days and printed in months of 30.4375 days, the convention of the WHO growth standards.",
  ],
  [
    "Limits of the age when met",
    "With brackets: percentile bootstrap over children, from the seed printed below. They are approximate: for this estimate the bootstrap is a convention, not a theorem.",
  ],
  [
    "Share by the close, and the source's share",
    "The share of children who have met the skill by the close of its window stands beside the share that the window's source expects. WHO windows run from the 1st to the 99th percentile (WHO Multicentre Growth Reference Study Group, Acta Paediatr Suppl 2006;450:86-95). CDC/AAP ages are those by which 75% or more of children would be expected to do it (Zubler et al., Pediatrics 2022;149(3):e2021052138). Common practice has no source and no expected share. They are never pooled.",
  ],
  [
    "Agreement",
    "Percent of pairs of observers of one child, skill and day who wrote the same result, and Cohen's kappa (Cohen 1960) over the four results.",
  ],
];
