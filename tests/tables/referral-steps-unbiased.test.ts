/**
 * Invented programs whose true share of plans within 45 days is known: over many of them, what the table prints must be
 * right on average. Judging a quick plan at once, and an open referral only after day 45, is not.
 */
import { cumulativeIncidence, ENDING, shareTakenBy } from "../../src/statistics/cumulative-incidence";
import { type Random, randomFrom } from "../../src/statistics/random";
import { isPlanJudged, isPlannedInTime, waitsFor } from "../../src/tables/referral-steps-sets";
import type { Timed } from "../../src/tables/referral-steps-times";

const AS_OF = 20_000;
const PERIOD_DAYS = 120;
const REFERRALS = 150;
const PROGRAMS = 400;

interface Law {
  readonly name: string;
  readonly days: (random: Random) => number;
  /** True share with a plan by day 45. */
  readonly byDay45: number;
}

/** The true shares are worked out on paper: see each name. */
const LAWS: readonly Law[] = [
  { name: "any day from 0 to 89: 46/90", days: (random) => random.nextInt(90), byDay45: 46 / 90 },
  {
    name: "1 in 50 on each day that it is still open: 1 - 0.98^46",
    days: (random) => Math.floor(Math.log(1 - random.nextUnit()) / Math.log(0.98)),
    byDay45: 1 - 0.98 ** 46,
  },
  {
    name: "6 in 10 after 10 to 29 days, the others after 60 to 99: 6/10",
    days: (random) => (random.nextUnit() < 0.6 ? 10 + random.nextInt(20) : 60 + random.nextInt(40)),
    byDay45: 0.6,
  },
];

function program(random: Random, law: Law, shareNotEligible = 0): Timed[] {
  return Array.from({ length: REFERRALS }, () => {
    const received = AS_OF - random.nextInt(PERIOD_DAYS);
    const plan = received + law.days(random);
    const refused = random.nextUnit() < shareNotEligible ? received + random.nextInt(60) : Infinity;
    const isRefused = refused < plan && refused <= AS_OF;
    return {
      received,
      evaluated: isRefused ? refused : null,
      isEligible: isRefused ? false : null,
      plan: !isRefused && refused > plan && plan <= AS_OF ? plan : null,
      lateReason: "",
      closed: null,
      asOf: AS_OF,
    };
  });
}

function meanAndError(values: readonly number[]) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, error: Math.sqrt(variance / values.length) };
}

const over = (of: (random: Random) => number) =>
  meanAndError(Array.from({ length: PROGRAMS }, (_, seed) => of(randomFrom(seed + 1))));

describe.each(LAWS)("plan on $name", (law) => {
  test("the share of the judged is right on average", () => {
    const { mean, error } = over((random) => {
      const all = program(random, law);
      return all.filter(isPlannedInTime).length / all.filter(isPlanJudged).length;
    });
    expect(Math.abs(mean - law.byDay45)).toBeLessThan(4 * error);
  });

  test("so is the estimate over all, open ones included", () => {
    const { mean, error } = over(
      (random) => shareTakenBy(cumulativeIncidence(waitsFor(program(random, law), "plan")), 45) as number,
    );
    expect(Math.abs(mean - law.byDay45)).toBeLessThan(4 * error);
  });

  test("judging a plan as soon as it is there would print too much", () => {
    const { mean, error } = over((random) => {
      const all = program(random, law);
      const within = all.filter(({ plan, received }) => plan !== null && plan - received <= 45).length;
      const late = all.filter(({ plan, received }) => (plan ?? AS_OF) - received > 45).length;
      return within / (within + late);
    });
    expect(mean - law.byDay45).toBeGreaterThan(4 * error);
  });
});

/**
 * A plan on any day from 0 to 89; 3 in 10 are found not eligible on any day from 0 to 59, if no plan comes first (on one
 * day, the plan). On paper, sums over days d: plan by 45 = 46/90 x 7/10 + 3/10 x sum(1/90 x (59 - d)/60, d = 0 to 45);
 * not eligible by 45 = 3/10 x sum(1/60 x (89 - d)/90, d = 0 to 45).
 */
test("with children found not eligible: plan by day 45 over 1 less not eligible by day 45", () => {
  const days = Array.from({ length: 46 }, (_, d) => d);
  const plan = (46 / 90) * 0.7 + 0.3 * days.reduce((sum, d) => sum + ((1 / 90) * (59 - d)) / 60, 0);
  const notEligible = 0.3 * days.reduce((sum, d) => sum + ((1 / 60) * (89 - d)) / 90, 0);
  const { mean, error } = over((random) => {
    const waits = waitsFor(program(random, LAWS[0]!, 0.3), "plan");
    expect(waits.ending).toContain(ENDING.needless);
    return shareTakenBy(cumulativeIncidence(waits), 45) as number;
  });
  expect(Math.abs(mean - plan / (1 - notEligible))).toBeLessThan(4 * error);
});
