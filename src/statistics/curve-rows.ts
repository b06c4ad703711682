import type { KaplanMeier } from "./kaplan-meier";
import type { Npmle } from "./npmle";
import { NO_MASS } from "./npmle-reading";

/** One stretch of ages that holds mass. `to` and `shareTo` are null beyond the last look. */
export interface CurveRow {
  readonly from: number;
  readonly to: number | null;
  readonly mass: number;
  readonly shareTo: number | null;
}

export function stepsAsRows({ steps, lastAgeDays }: KaplanMeier): CurveRow[] {
  const rows = steps.map(({ ageDays, survival }, index): CurveRow => {
    const mass = (index === 0 ? 1 : steps[index - 1]!.survival) - survival;
    return { from: ageDays, to: ageDays, mass, shareTo: 1 - survival };
  });
  const left = steps.at(-1)?.survival ?? 1;
  rows.push({ from: lastAgeDays, to: null, mass: left, shareTo: null });
  return rows.filter((row) => row.mass > NO_MASS);
}

export function massAsRows({ from, to, mass, shareTo }: Npmle): CurveRow[] {
  return Array.from(mass, (part, index): CurveRow => {
    const finite = to[index] !== Infinity;
    return { from: from[index]!, to: finite ? to[index]! : null, mass: part, shareTo: finite ? shareTo[index]! : null };
  }).filter((row) => row.mass > NO_MASS);
}

/** Nobody was seen with the skill: all mass lies beyond the last look. */
export function nobodyMet(after: Float64Array): CurveRow[] {
  return [{ from: after.reduce((latest, age) => Math.max(latest, age)), to: null, mass: 1, shareTo: null }];
}
