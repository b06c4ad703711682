/** At the foot of every page of figures. */
export const CAUTION =
  "These figures describe a program, not a diagnosis; for any child, talk with the child's clinician.";

/** How the figures are to be read, in short: page 2 of the report and the sheet Method quote these. */
export const HOW_TO_READ: readonly string[] = [
  "Read the counts before the percent. Figures about a few children change a great deal with one child more.",
  "“Up to date” means checked within the recheck limit. What nobody checked counts neither as met nor as not met.",
  "A check shows what was seen that day. Between two visits nobody knows the day on which a skill was met.",
  "An expected window says at which ages children in its source met a skill. Past an age by which 75 or more in 100 children do it, up to one child in four is still without it. Past a window that 99 in 100 children meet, a child without the skill is unusual.",
  "A likely range (95% confidence interval) allows for chance alone, and not for records that are missing.",
  "A share moves with the ages of the children. A change between quarters is not by itself progress or loss.",
  "Local rules and licensed practice decide what is done.",
  "Where a skill that was there is gone, talk with the child's clinician without waiting.",
];
