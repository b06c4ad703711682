/**
 * A 3 by 2 table with four cells hidden: row totals 7, 3, 6, column totals 9, 7, last row shown as 3, 3.
 *
 * Hundepool et al., Handbook on Statistical Disclosure Control, 2nd ed. (2024), section 4.2, example 3, after Geurts (1992),
 * Table 10. The bounds 3 and 6 of cell (1,1) are printed there; the other three were computed by linear programming.
 */
export const geurts1992 = {
  rowTotals: [7, 3],
  columnTotals: [6, 4],
  lower: [3, 1, 0, 0],
  upper: [6, 4, 3, 3],
} as const;
