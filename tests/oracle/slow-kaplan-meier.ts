/**
 * Share met by each age where every age is exact or right-censored: at each age with a child who met the skill, one
 * less the share of those at risk who did. Kaplan and Meier (1958), J Am Stat Assoc 53:457-481; the variance is Greenwood's.
 */
export interface ExactAge {
  /** Days of age when met, or at the last look. */
  readonly age: number;
  readonly met: boolean;
  /** Days of age from which the child was watched; at risk on later days only. */
  readonly entry?: number;
}

export interface Step {
  readonly age: number;
  readonly atRisk: number;
  readonly met: number;
  /** Share still without the skill after this age. */
  readonly without: number;
  /** Greenwood's variance of `without`; null once nobody is left without the skill. */
  readonly variance: number | null;
}

export function slowKaplanMeier(children: readonly ExactAge[]): Step[] {
  const ages = [...new Set(children.filter((child) => child.met).map((child) => child.age))].sort((a, b) => a - b);
  const steps: Step[] = [];
  let without = 1;
  let sum = 0;
  for (const age of ages) {
    const atRisk = children.filter((child) => (child.entry ?? -Infinity) < age && child.age >= age).length;
    const met = children.filter((child) => child.met && child.age === age && (child.entry ?? -Infinity) < age).length;
    if (atRisk === 0) continue;
    without *= 1 - met / atRisk;
    sum += met / (atRisk * (atRisk - met));
    steps.push({ age, atRisk, met, without, variance: atRisk === met ? null : without * without * sum });
  }
  return steps;
}

/** Share met by an age: 0 before the first step. */
export function shareMetBy(steps: readonly Step[], age: number): number {
  let share = 0;
  for (const step of steps) if (step.age <= age) share = 1 - step.without;
  return share;
}

/** First age at which the share met reaches p; null where it never does. */
export function firstAgeWith(steps: readonly Step[], p: number): number | null {
  return steps.find((step) => 1 - step.without >= p - 1e-7)?.age ?? null;
}
