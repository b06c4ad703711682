/**
 * Two raters. Fleiss, Levin & Paik (2003), Statistical Methods for Rates and Proportions, 3rd ed., table 18.1 (kappa 0.68), and
 * Cohen (1968), Psychol Bull 70:213-220, table 1 (kappa 0.492). Counts and printed kappas from memory; the N of 200 is read.
 * `kappa` and `standardError`: vcd::Kappa(table), R 4.2.2, vcd 1.4.11.
 */
export const fleiss2003 = {
  counts: [
    [75, 1, 4],
    [5, 4, 1],
    [0, 0, 10],
  ],
  printedKappa: 0.68,
  n: 100,
  kappa: 0.676470588235294,
  standardError: 0.0877029534752125,
  percent: 89,
} as const;
export const cohen1968 = {
  counts: [
    [88, 10, 2],
    [14, 40, 6],
    [18, 10, 12],
  ],
  printedKappa: 0.492,
  n: 200,
  kappa: 0.491525423728813,
  standardError: 0.0510018155760779,
  percent: 70,
} as const;
