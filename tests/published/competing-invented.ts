/**
 * Days that 24 invented referrals waited, and how the wait ended: 0 still open, 1 plan, 2 not eligible.
 *
 * Answers: survival::survfit(Surv(days, factor(ending, 0:2, c("censor", "plan", "notEligible"))) ~ 1)$pstate and, for one
 * ending alone, 1 - survfit(Surv(days, ending == 1) ~ 1)$surv. R 4.2.2, survival 3.5-3, as printed to ten digits.
 */
export const DAYS = [5, 9, 12, 12, 18, 20, 20, 21, 25, 28, 30, 30, 33, 38, 40, 41, 45, 45, 47, 50, 52, 60, 75, 90];
export const ENDINGS = [1, 0, 1, 2, 2, 1, 1, 0, 1, 2, 1, 0, 1, 0, 2, 1, 1, 0, 1, 1, 0, 2, 1, 0];

/** Day, at risk, still waiting, plan, not eligible. */
export const STATES: readonly (readonly [number, number, number, number, number])[] = [
  [5, 24, 0.95833333333, 0.04166666667, 0],
  [12, 22, 0.87121212121, 0.08522727273, 0.04356060606],
  [18, 20, 0.82765151515, 0.08522727273, 0.08712121212],
  [20, 19, 0.74053030303, 0.17234848485, 0.08712121212],
  [25, 16, 0.69424715909, 0.21863162879, 0.08712121212],
  [28, 15, 0.64796401515, 0.21863162879, 0.13340435606],
  [30, 14, 0.60168087121, 0.26491477273, 0.13340435606],
  [33, 12, 0.55154079861, 0.31505484533, 0.13340435606],
  [40, 10, 0.49638671875, 0.31505484533, 0.18855843592],
  [41, 9, 0.44123263889, 0.37020892519, 0.18855843592],
  [45, 8, 0.38607855903, 0.42536300505, 0.18855843592],
  [47, 6, 0.32173213252, 0.48970943156, 0.18855843592],
  [50, 5, 0.25738570602, 0.55405585806, 0.18855843592],
  [60, 3, 0.17159047068, 0.55405585806, 0.27435367126],
  [75, 2, 0.08579523534, 0.6398510934, 0.27435367126],
];

/** Of those not found ineligible by day 45: 0.425363005051 / (1 - 0.188558435922). */
export const PLAN_BY_45 = 0.524206577381;

/** Kaplan and Meier's share by day 45, "not eligible" counting as still open. */
export const ONE_ENDING_BY_45 = 0.49200189602;
