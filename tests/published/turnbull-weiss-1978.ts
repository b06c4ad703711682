/**
 * Age in years at first use, 191 high-school boys: exact, not yet, or already before. Turnbull & Weiss (1978),
 * Biometrics 34:367-375; Klein & Moeschberger (2003), Survival Analysis, example 5.1. "Older than 18" stands as 19.
 * The counts and `surviving` as printed are from memory (the counts total 191). `mass` and `logLikelihood` are computed with
 * npsurv::npsurv(..., tol = 1e-12) and EM steps to the last digit, R 4.2.2, npsurv 0.5.0, and agree with print to 3 digits.
 */
export const turnbullWeiss1978 = {
  after: [10, 11, 12, 12, 13, 13, 0, 14, 14, 0, 15, 15, 0, 16, 16, 0, 17, 17, 0, 0, 19],
  by: [
    10,
    11,
    12,
    Infinity,
    13,
    Infinity,
    13,
    14,
    Infinity,
    14,
    15,
    Infinity,
    15,
    16,
    Infinity,
    16,
    17,
    Infinity,
    17,
    18,
    19,
  ],
  count: [4, 12, 19, 2, 24, 15, 1, 20, 24, 2, 13, 18, 3, 3, 14, 2, 1, 6, 3, 1, 4],
  printed: {
    age: [10, 11, 12, 13, 14, 15, 16, 17],
    surviving: [0.977, 0.906, 0.794, 0.651, 0.516, 0.392, 0.345, 0.308],
  },
  from: [10, 11, 12, 13, 14, 15, 16, 17, 19],
  to: [10, 11, 12, 13, 14, 15, 16, 17, 19],
  mass: [
    0.0234973231956087, 0.0704919695868262, 0.111612285179142, 0.143100304214311, 0.135546004905467, 0.123635830014192,
    0.0467450510326686, 0.0374574039311964, 0.307913827940589,
  ],
  logLikelihood: -287.386076483363,
} as const;
