/**
 * Defects of 25 wafers. NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1. The values are memory; that they sum to
 * 400, so that the centre is 16, and that wafer 24 alone is beyond the limits of 4 and 28 is memory of the page too.
 */
export const nistCChart = {
  counts: [16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13],
  centre: 16,
  beyond: [24],
} as const;
