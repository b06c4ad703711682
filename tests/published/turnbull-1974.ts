/**
 * Doubly censored example, n = 44. Turnbull (1974), J Am Stat Assoc 69:169-173.
 * `surviving` as printed: read in the file tests/turnbull.R of R's survival, which quotes the article.
 * `mass` and `logLikelihood`: computed with npsurv::npsurv(cbind(after, by, count), tol = 1e-12) and EM steps to the last
 * digit, R 4.2.2, npsurv 0.5.0; the same as survfit(Surv(time, time, status, type = "interval")), survival 3.5.3.
 */
export const turnbull1974 = {
  after: [1, 1, 0, 2, 2, 0, 3, 0, 4, 4, 0],
  by: [1, Infinity, 1, 2, Infinity, 2, 3, 3, 4, Infinity, 4],
  count: [12, 3, 2, 6, 2, 4, 2, 2, 3, 3, 5],
  printed: { age: [1, 2, 3, 4], surviving: [0.538, 0.295, 0.21, 0.095] },
  from: [1, 2, 3, 4, 4],
  to: [1, 2, 3, 4, Infinity],
  mass: [0.462432188133036, 0.242973825893327, 0.0848338093635621, 0.114914423232041, 0.094845753378034],
  logLikelihood: -44.4491488789488,
} as const;
