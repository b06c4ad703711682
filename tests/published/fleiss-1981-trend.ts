/**
 * Smokers among patients of four studies. Fleiss (1981), Statistical Methods for Rates and Proportions, 2nd ed., p. 139, as in
 * the example of R's prop.trend.test, whose printed chi-squared is read.
 */
export const fleiss1981Trend = { counts: [83, 90, 129, 70], of: [86, 93, 136, 82], chiSquared: 8.2249 } as const;
