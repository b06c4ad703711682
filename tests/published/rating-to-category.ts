/**
 * All 98 combinations of entry rating, exit rating and "any new skill since entry", and the progress category of each: one
 * row an exit rating from 1 to 7, one letter an entry rating from 1 to 7. Federal Part C child-outcome indicator (Indicator
 * 3), conversion of ratings as states hand it out; read in full in a stored copy.
 */
export const ratingToCategory = {
  withNewSkills: ["bbbbbbb", "cbbbbbb", "ccbbbbb", "cccbbbb", "ccccbbb", "dddddee", "dddddee"],
  withoutNewSkills: ["aaaaaaa", "cbaaaaa", "ccbaaaa", "cccbaaa", "ccccbaa", "dddddee", "dddddee"],
} as const;

/**
 * Percent of children in categories a to e, and the two summary statements as printed (rounded), 792 children of one state,
 * July 2008 to June 2009: outcomes 1 and 3, read in stored slides. Outcome 2 is left out, since its percents sum to 102.
 */
export const summaryStatements2009 = [
  { categories: [0, 9, 13, 29, 49], printed: [82, 78] },
  { categories: [1, 8, 12, 45, 35], printed: [86, 79] },
] as const;
