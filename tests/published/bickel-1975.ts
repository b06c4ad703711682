/**
 * Admission by sex at six departments, Bickel, Hammel & O'Connell (1975), Science 187:398-403, as R's data set UCBAdmissions:
 * men lead pooled, and do not within departments. The Mantel-Haenszel chi-squared without continuity correction is that of
 * mantelhaen.test(UCBAdmissions, correct = FALSE), R 4.2.2.
 */
export const bickel1975 = {
  /** Admitted and rejected, women then men, departments A to F. */
  departments: [
    { women: [89, 19], men: [512, 313] },
    { women: [17, 8], men: [353, 207] },
    { women: [202, 391], men: [120, 205] },
    { women: [131, 244], men: [138, 279] },
    { women: [94, 299], men: [53, 138] },
    { women: [24, 317], men: [22, 351] },
  ],
  commonOddsRatio: 0.904696828258623,
  chiSquared: 1.52460666044344,
} as const;
