/**
 * Delinquent children by county and education of the household head. Federal Committee on Statistical Methodology,
 * Statistical Policy Working Paper 22 (OMB 1994, rev. 2005), chapter II. Cell values from memory; every total adds up.
 * Bounds: R 4.2.2, lpSolve 5.6.18, a linear programme for each end. Threshold 5; positions row by row, from 1.
 */
export const delinquentChildren = {
  table: [
    [15, 1, 3, 1],
    [20, 10, 10, 15],
    [3, 10, 10, 2],
    [12, 14, 7, 2],
  ],
  threshold: 5,
  patterns: [
    {
      name: "only the small counts",
      hidden: [2, 3, 4, 9, 12, 16],
      lower: [1, 3, 1, 3, 2, 2],
      upper: [1, 3, 1, 3, 2, 2],
    },
    {
      name: "one more in each row",
      hidden: [2, 3, 4, 6, 7, 9, 12, 13, 16],
      lower: [0, 0, 1, 7, 9, 1, 0, 10, 0],
      upper: [4, 4, 1, 11, 13, 5, 4, 14, 4],
    },
    {
      name: "two or more in each row and column",
      hidden: [2, 3, 4, 9, 10, 12, 13, 15, 16],
      lower: [0, 0, 0, 0, 6, 0, 6, 5, 0],
      upper: [5, 5, 5, 9, 11, 5, 15, 10, 5],
    },
  ],
} as const;
