/**
 * Two treatments of kidney stones, successes of patients by size of stone: the first is better for either size and worse
 * pooled. Charig et al. (1986), Br Med J 292:879-882. Numbers from memory; they sum to the 273 and 289 of 350 printed.
 */
export const charig1986 = {
  first: [
    { count: 81, of: 87 },
    { count: 192, of: 263 },
  ],
  second: [
    { count: 234, of: 270 },
    { count: 55, of: 80 },
  ],
  pooled: [273 / 350, 289 / 350],
} as const;
