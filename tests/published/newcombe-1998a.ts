/**
 * Limits of a share, four examples. Newcombe (1998), Stat Med 17:857-872, table I. Wilson limits: read in public test code that
 * quotes the table; exact and mid-p limits: memory of the table, and R formulas agree to its 4 digits.
 */
export const newcombe1998a = [
  { count: 81, of: 263, wilson: [0.2553, 0.3662], exact: [0.2527, 0.3676], midP: [0.2544, 0.3658] },
  { count: 15, of: 148, wilson: [0.0624, 0.1605], exact: [0.0578, 0.1617], midP: [0.0601, 0.1581] },
  { count: 0, of: 20, wilson: [0, 0.1611], exact: [0, 0.1684], midP: [0, 0.1391] },
  { count: 1, of: 29, wilson: [0.0061, 0.1718], exact: [0.0009, 0.1776], midP: [0.0017, 0.1585] },
] as const;
