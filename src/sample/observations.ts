import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { NEVER } from "./attainment";
import { chooseLooks, REPLACED_BY, type WhatIsKnown } from "./looks";
import { isLost, type TrueLoss } from "./losses";
import { SKILLS } from "./skills";
import type { Visit } from "./visits";

export type Result = "met" | "emerging" | "not met" | "lost";

export interface SampleObservation {
  readonly child: number;
  readonly skill: number;
  readonly day: Day;
  readonly result: Result;
  readonly observer: string;
  /** Null where the program did not note it. */
  readonly entered: Day | null;
}

/** What the sample knows to be true, which the records only show in part. */
export interface Truth {
  readonly children: readonly SampleChild[];
  readonly attained: readonly Int32Array[];
  readonly losses: readonly TrueLoss[];
}

/** Every look at every visit, child by child. */
export function drawObservations(truth: Truth, visits: readonly Visit[], seed: number): SampleObservation[] {
  const chance = chanceOf(seed, 5);
  const known = truth.children.map((): WhatIsKnown => ({ met: new Uint8Array(SKILLS.length) }));
  return visits.flatMap((visit) => drawVisit(chance, truth, visit, known[visit.child] as WhatIsKnown));
}

function drawVisit(chance: Chance, truth: Truth, visit: Visit, known: WhatIsKnown): SampleObservation[] {
  const child = truth.children[visit.child] as SampleChild;
  const losses = truth.losses.filter((loss) => loss.child === visit.child);
  const entered = enteredOn(chance, visit.day);
  return chooseLooks(chance, child, visit, losses, known).flatMap((skill) => {
    const result = seen(chance, standing(truth, visit, skill, losses), known.met[skill] === 1);
    const first: SampleObservation = {
      child: visit.child,
      skill,
      day: visit.day,
      result,
      observer: visit.observer,
      entered,
    };
    const looks = visit.secondObserver === "" ? [first] : [first, secondLook(chance, first, visit)];
    if (looks.every((look) => look.result === "met")) known.met[skill] = 1;
    return looks;
  });
}

/** Days since the child came to do the skill (negative: days to go), and whether it is lost or outgrown by the day. */
interface Standing {
  readonly daysSince: number;
  readonly lost: boolean;
  readonly outgrown: boolean;
}

/** A child who has walked for two months seldom crawls. */
const OUTGROWN_AFTER_DAYS = 60;

function standing(truth: Truth, visit: Visit, skill: number, losses: readonly TrueLoss[]): Standing {
  const attained = truth.attained[visit.child] as Int32Array;
  const replaced = attained[REPLACED_BY[skill] as number] ?? NEVER;
  return {
    daysSince: visit.day - (attained[skill] as Day),
    lost: isLost(losses, skill, visit.day),
    outgrown: visit.day - replaced > OUTGROWN_AFTER_DAYS,
  };
}

const SHARE_DISAGREEING = 0.07;

function secondLook(chance: Chance, first: SampleObservation, visit: Visit): SampleObservation {
  const other = first.result === "met" ? "emerging" : first.result === "emerging" ? "not met" : "emerging";
  const result = chance.yes(SHARE_DISAGREEING) ? other : first.result;
  return { ...first, result, observer: visit.secondObserver, entered: enteredOn(chance, visit.day) };
}

/** A child does not show everything at every visit, and a skill shows in parts before it is there. */
function seen(chance: Chance, { daysSince, lost, outgrown }: Standing, metBefore: boolean): Result {
  if (lost) return metBefore ? chance.weighted(["lost", "not met", "emerging"], [6, 3, 1]) : "not met";
  if (metBefore && outgrown) return chance.weighted(["met", "not met"], [6, 4]);
  if (daysSince >= 0)
    return chance.yes(metBefore ? 0.985 : 0.95) ? "met" : chance.weighted(["emerging", "not met"], [3, 1]);
  return chance.yes(daysSince >= -40 ? 0.55 : daysSince >= -100 ? 0.2 : 0.03) ? "emerging" : "not met";
}

/** Most looks are typed in within days, some weeks later. */
function enteredOn(chance: Chance, day: Day): Day | null {
  if (chance.yes(0.03)) return null;
  const [from, to] = chance.weighted(
    [
      [0, 2],
      [3, 14],
      [15, 45],
      [46, 120],
    ] as const,
    [60, 28, 9, 3],
  );
  return day + chance.whole(from, to);
}
