/**
 * Fifteen p values. Benjamini & Hochberg (1995), J R Stat Soc B 57:289-300. The values are read (SciPy documentation of
 * false_discovery_control); that 4 are kept by this method and 3 by Bonferroni at 0.05 is memory of the article.
 * `holm` and `bh`: p.adjust(p, "holm") and p.adjust(p, "BH"), R 4.2.2.
 */
export const benjaminiHochberg1995 = {
  p: [0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1],
  keptByBh: 4,
  keptByBonferroni: 3,
  holm: [0.0015, 0.0056, 0.0247, 0.114, 0.2211, 0.278, 0.278, 0.278, 0.3213, 1, 1, 1, 1, 1, 1],
  bh: [
    0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.0638571428571429, 0.0638571428571429, 0.0645, 0.0765, 0.486,
    0.581181818181818, 0.714875, 0.753230769230769, 0.813214285714286, 1,
  ],
} as const;
