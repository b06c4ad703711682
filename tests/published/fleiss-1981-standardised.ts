/**
 * Births with Down syndrome by birth order (columns) and mother's age (rows). Fleiss (1981), Statistical Methods for Rates
 * and Proportions, 2nd ed., p. 249; the data are read in the documentation of R's epitools and tidyrates. `adjusted`: the
 * births of all orders as standard, sum(w * count / births) with w = all / sum(all), R 4.2.2; that the first and the crude
 * one are printed as 92.3 and 56.3 per 100,000 is memory.
 */
export const fleiss1981 = {
  births: [
    [230061, 329449, 114920, 39487, 14208, 3052],
    [72202, 326701, 208667, 83228, 28466, 5375],
    [15050, 175702, 207081, 117300, 45026, 8660],
    [2293, 68800, 132424, 98301, 46075, 9834],
    [327, 30666, 123419, 149919, 104088, 34392],
  ],
  counts: [
    [107, 141, 60, 40, 39, 25],
    [25, 150, 110, 84, 82, 39],
    [3, 71, 114, 103, 108, 75],
    [1, 26, 64, 89, 137, 96],
    [0, 8, 63, 112, 262, 295],
  ],
  all: [319933, 931318, 786511, 488235, 237863, 61313],
  printedFirst: 92.3,
  printedCrudeFirst: 56.3,
  adjusted: [
    0.000923045255331994, 0.000911741168346641, 0.000850692213383019, 0.000927178650551998, 0.000755290074452568,
  ],
} as const;
