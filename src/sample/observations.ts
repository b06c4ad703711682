import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { chooseLooks, isReplaced, type WhatIsKnown } from "./looks";
import { isLost, type TrueLoss } from "./losses";
import { IN_ORDER, SKILLS, skillIndex, STEPS_BEFORE } from "./skills";
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
  const nothing = (): Uint8Array => new Uint8Array(SKILLS.length);
  const known = truth.children.map((): WhatIsKnown => ({ met: nothing(), waiting: nothing(), reviewed: null }));
  return visits.flatMap((visit) => drawVisit(chance, truth, visit, known[visit.child] as WhatIsKnown));
}

function drawVisit(chance: Chance, truth: Truth, visit: Visit, known: WhatIsKnown): SampleObservation[] {
  const child = truth.children[visit.child] as SampleChild;
  const losses = truth.losses.filter((loss) => loss.child === visit.child);
  const entered = enteredOn(chance, visit.day);
  const results = resultsOf(chance, truth, visit, chooseLooks(chance, child, visit, losses, known), known);
  return [...results].flatMap(([skill, result]) => {
    const first: SampleObservation = {
      child: visit.child,
      skill,
      day: visit.day,
      result,
      observer: visit.observer,
      entered,
    };
    const looks = visit.secondObserver === "" ? [first] : [first, secondLook(chance, first, visit, known)];
    const met = looks.every((look) => look.result === "met");
    if (met) known.met[skill] = 1;
    known.waiting[skill] = met ? 0 : 1;
    return looks;
  });
}

/** Later skills first: who is seen to walk is not noted as still waiting to stand, and what was waited for is ticked off. */
function resultsOf(
  chance: Chance,
  truth: Truth,
  visit: Visit,
  chosen: readonly number[],
  known: WhatIsKnown,
): Map<number, Result> {
  const losses = truth.losses.filter((loss) => loss.child === visit.child);
  const shown = new Set<number>();
  const results: [skill: number, result: Result][] = [];
  for (const skill of LATER_FIRST) {
    const where = standing(truth, visit, skill, losses, known);
    const shows = shown.has(skill) && where.daysSince >= 0 && !where.lost && !where.outgrown;
    const looked = chosen.includes(skill) || (shows && known.waiting[skill] === 1);
    const result = looked ? seen(chance, where) : null;
    if (looked) results.push([skill, shows ? "met" : (result as Result)]);
    if (shows || result === "met") STEPS_BEFORE[skill]?.forEach((step) => shown.add(step));
  }
  return new Map(results.sort(([a], [b]) => a - b));
}

const LATER_FIRST = [...IN_ORDER].reverse();

/** Where a child truly stands with a skill on the day of a look, and what the records hold of it so far. */
interface Standing {
  /** Days since the child came to do it; negative: days to go. */
  readonly daysSince: number;
  readonly lost: boolean;
  readonly outgrown: boolean;
  readonly metBefore: boolean;
}

const CRAWL = skillIndex("crawl");
const WALK = skillIndex("walk-alone");
/** A child who has walked for two months seldom crawls. */
const OUTGROWN_AFTER_DAYS = 60;

function standing(
  truth: Truth,
  visit: Visit,
  skill: number,
  losses: readonly TrueLoss[],
  { met }: WhatIsKnown,
): Standing {
  const attained = truth.attained[visit.child] as Int32Array;
  return {
    daysSince: visit.day - (attained[skill] as Day),
    lost: isLost(losses, skill, visit.day),
    outgrown: skill === CRAWL && isReplaced(met, skill) && visit.day - (attained[WALK] as Day) > OUTGROWN_AFTER_DAYS,
    metBefore: met[skill] === 1,
  };
}

const SHARE_DISAGREEING = 0.07;

/** Two observers differ over what is coming, hardly over what has been there for long. */
function secondLook(
  chance: Chance,
  first: SampleObservation,
  visit: Visit,
  { met, waiting }: WhatIsKnown,
): SampleObservation {
  const other = first.result === "met" ? "emerging" : first.result === "emerging" ? "not met" : "emerging";
  const settled = met[first.skill] === 1 || (first.result === "met" && waiting[first.skill] === 0);
  const result = chance.yes(SHARE_DISAGREEING) && !settled ? other : first.result;
  return { ...first, result, observer: visit.secondObserver, entered: enteredOn(chance, visit.day) };
}

/** Days after which a skill that is there shows at every look. */
const SHOWS_ALWAYS_AFTER_DAYS = 40;

/** A skill shows in parts before it is there, and not at every look when it is new. */
function seen(chance: Chance, { daysSince, lost, outgrown, metBefore }: Standing): Result {
  const share = chance.share();
  if (lost) return metBefore && share < 0.7 ? "lost" : "not met";
  if (outgrown) return share < 0.5 ? "met" : "not met";
  if (metBefore || daysSince >= SHOWS_ALWAYS_AFTER_DAYS) return "met";
  if (daysSince >= 0) return share < 0.85 ? "met" : "emerging";
  return share < (daysSince >= -40 ? 0.55 : daysSince >= -100 ? 0.2 : 0.03) ? "emerging" : "not met";
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
