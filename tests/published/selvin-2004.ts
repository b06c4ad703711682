/**
 * Cancer deaths of US white males, 1960 against 1940 rates. Selvin (2004), Statistical Analysis of Epidemiologic Data, 3rd ed.; the
 * data are read in the help page of R's epitools ageadjust.indirect. Expected count: epitools::ageadjust.indirect, epitools
 * 0.5.10.1; `exact`: qchisq limits of the observed over the expected count, R 4.2.2.
 */
export const selvin2004 = {
  observed: 71058,
  expected: 85556.8888445257,
  ratio: 0.830535108974414,
  lower: 0.824439585208822,
  upper: 0.836664504708706,
  observedByAge: [45, 201, 320, 670, 1126, 3160, 9723, 17935, 22179, 13461, 2238],
  population: [906897, 3794573, 10003544, 10629526, 9465330, 8249558, 7294330, 5022499, 2920220, 1019504, 142532],
  standardDeaths: [141, 926, 1253, 1080, 1869, 4891, 14956, 30888, 41725, 26501, 5928],
  standardPopulation: [
    1784033, 7065148, 15658730, 10482916, 9939972, 10563872, 9114202, 6850263, 4702482, 1874619, 330915,
  ],
} as const;
