import { NO_MASS, SHARE_REACHED_WITHIN } from "./npmle-reading";

/** How a wait ended: not by the last day watched, with the step waited for, or with what makes it needless. */
export const ENDING = { none: 0, step: 1, needless: 2 } as const;

export interface Waits {
  /** days waited, until the ending or the last day watched */
  readonly days: Float64Array;
  /** ENDING of each */
  readonly ending: Uint8Array;
}

/** One day on which a wait ended. */
export interface IncidenceStep {
  readonly days: number;
  /** waits still going on just before */
  readonly atRisk: number;
  /** share of all waits that ended with the step by that day, 0 to 1 */
  readonly step: number;
  /** share of all waits that became needless by that day, 0 to 1 */
  readonly needless: number;
  /** share still waiting after that day, 0 to 1 */
  readonly waiting: number;
}

export interface Incidence {
  readonly steps: readonly IncidenceStep[];
  /** most days that any wait was watched for; null without a wait */
  readonly lastDays: number | null;
}

/**
 * Share of waits that ended in one of two ways by each day, where some are still going on. On each day the share still
 * waiting is split by what ended: d of one kind among n at risk take d / n of it. With one kind alone this is Kaplan and
 * Meier's estimate.
 *
 * Source: Aalen & Johansen (1978), Scand J Stat 5:141-150; Kalbfleisch & Prentice (1980), section 7.2.
 *
 * @throws {RangeError} when the columns differ in length, or a wait is not a number of days
 */
export function cumulativeIncidence({ days, ending }: Waits): Incidence {
  if (days.length !== ending.length) throw new RangeError("cumulativeIncidence: the columns differ in length");
  if (!days.every(Number.isFinite)) throw new RangeError("cumulativeIncidence: a wait is not a number of days");
  const order = [...days.keys()].sort((a, b) => days[a]! - days[b]!);
  const steps: IncidenceStep[] = [];
  let now = { step: 0, needless: 0, waiting: 1 };
  for (let from = 0, to = 0; from < order.length; from = to) {
    const day = days[order[from]!]!;
    while (to < order.length && days[order[to]!] === day) to += 1;
    const ended = (kind: number) => order.slice(from, to).filter((at) => ending[at] === kind).length;
    const [taken, needless] = [ended(ENDING.step), ended(ENDING.needless)];
    if (taken + needless === 0) continue;
    const atRisk = order.length - from;
    now = {
      step: now.step + (now.waiting * taken) / atRisk,
      needless: now.needless + (now.waiting * needless) / atRisk,
      waiting: (now.waiting * (atRisk - taken - needless)) / atRisk,
    };
    steps.push({ days: day, atRisk, ...now });
  }
  return { steps, lastDays: order.length === 0 ? null : days[order[order.length - 1]!]! };
}

/**
 * Of the waits that did not become needless by a day, the share that ended with the step by then. Null where nobody was
 * watched for so long and some still waited, and where every wait became needless.
 */
export function shareTakenBy({ steps, lastDays }: Incidence, days: number): number | null {
  if (lastDays === null) return null;
  const last = steps.findLast((each) => each.days <= days);
  if (lastDays < days && (last?.waiting ?? 1) > NO_MASS) return null;
  return last === undefined ? 0 : shareOfNeeded(last);
}

/** The first day by which that share reaches `share`; null where it does not. */
export function daysUntilTaken({ steps }: Incidence, share: number): number | null {
  const reached = steps.find((each) => (shareOfNeeded(each) ?? 0) >= share - SHARE_REACHED_WITHIN);
  return reached?.days ?? null;
}

/** Over 1 less the share that became needless, which is what was taken and what still waits. */
function shareOfNeeded({ step, waiting }: IncidenceStep): number | null {
  return step + waiting > NO_MASS ? step / (step + waiting) : null;
}
