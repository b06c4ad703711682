/**
 * Transition from early intervention: a conference not fewer than 90 days before the third birthday. Source: 34 CFR
 * 303.209(c), text read on sites.ed.gov. The dates are worked out from it outside this program (R 4.2.2, lubridate 1.9.2:
 * birth %m+% months(36), and that day less 90).
 */
export const PART_C_TRANSITION = [
  { birth: "2021-03-31", thirdBirthday: "2024-03-31", ninetyDaysBefore: "2024-01-01" },
  { birth: "2021-12-01", thirdBirthday: "2024-12-01", ninetyDaysBefore: "2024-09-02" },
  { birth: "2022-07-04", thirdBirthday: "2025-07-04", ninetyDaysBefore: "2025-04-05" },
] as const;
