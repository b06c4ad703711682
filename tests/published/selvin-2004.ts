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
} as const;
