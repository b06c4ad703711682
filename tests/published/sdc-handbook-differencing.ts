/**
 * Hundepool et al., Handbook on Statistical Disclosure Control, 2nd edition 2024, section 5.2: marital status by sex of one
 * area within its borders of 1991 and of 2001. What lies between the two borders can be read off both tables.
 * Read in sdcTools/HandbookSDC.
 */
export const DIFFERENCING = {
  rows: ["Married", "Divorced", "Single"],
  columns: ["Male", "Female"],
  within1991: [
    [52, 55],
    [130, 140],
    [39, 49],
  ],
  within2001: [
    [50, 54],
    [128, 140],
    [39, 49],
  ],
  between: [
    [2, 1],
    [2, 0],
    [0, 0],
  ],
} as const;
