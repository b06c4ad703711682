import { ageClock, type AgeClock, type CorrectionRule } from "../age/correction";
import type { Day } from "../age/day";
import { addMonths } from "../age/months";
import { type Chance, chanceOf } from "./chance";
import { type DrawnGestation, gestationDraws } from "./gestation";
import { SITES, type Site } from "./program";
import { drawStays, type Stay } from "./stays";

/** One invented child, as true as the sample knows it. */
export interface SampleChild {
  readonly id: string;
  readonly birth: Day;
  readonly gestation: DrawnGestation;
  readonly clock: AgeClock;
  readonly family: string;
  readonly homeLanguage: string;
  readonly stays: readonly Stay[];
}

export interface SpanOfRecords {
  readonly first: Day;
  readonly last: Day;
}

/** The usual rule: born before 37 weeks, corrected until 24 months. Source: AAP, Pediatrics 2004;114:1362-1364. */
export const SAMPLE_CORRECTION: CorrectionRule = { belowDays: 259, untilMonths: 24, untilAge: "chronological" };

type Unnumbered = Omit<SampleChild, "id">;
type GestationDraw = (twins: boolean) => DrawnGestation;

/** Children in the order in which they enrolled; that order gives the ids. */
export function drawChildren(count: number, seed: number, span: SpanOfRecords): SampleChild[] {
  const chance = chanceOf(seed, 1);
  const gestation = gestationDraws(chance);
  const drawn: Unnumbered[] = [];
  for (let family = 1; drawn.length < count; family += 1) drawn.push(...drawFamily(chance, gestation, family, span));
  return drawn
    .slice(0, count)
    .sort((a, b) => (a.stays[0] as Stay).enrolled - (b.stays[0] as Stay).enrolled)
    .map((child, index) => ({ id: `AF-${String(index + 1).padStart(4, "0")}`, ...child }));
}

function drawFamily(chance: Chance, drawGestation: GestationDraw, number: number, span: SpanOfRecords): Unnumbered[] {
  const kind = chance.weighted(["one", "twins", "siblings"] as const, [89, 4, 7]);
  const family = kind === "one" ? "" : `F${String(number).padStart(3, "0")}`;
  const home = drawHome(chance, family);
  const enrolled = chance.whole(span.first, span.last - 25);
  const birth = enrolled - drawAgeAtEnrolment(chance);
  const gestation = drawGestation(kind === "twins");
  const oldest = childOf(chance, { birth, enrolled, gestation }, home, span);
  if (kind === "twins") return [oldest, childOf(chance, { birth, enrolled, gestation }, home, span)];
  if (kind === "one") return [oldest];
  const younger = youngerSibling(chance, drawGestation, birth, span);
  return younger ? [oldest, childOf(chance, younger, home, span)] : [{ ...oldest, family: "" }];
}

interface Home {
  readonly site: Site;
  readonly family: string;
  readonly homeLanguage: string;
}

interface Start {
  readonly birth: Day;
  readonly enrolled: Day;
  readonly gestation: DrawnGestation;
}

function drawHome(chance: Chance, family: string): Home {
  const site = chance.weighted(
    SITES,
    SITES.map((each) => each.weight),
  );
  return { site, family, homeLanguage: chance.weighted(["L1", "L2", "L3"], [64, 25, 11]) };
}

function youngerSibling(
  chance: Chance,
  drawGestation: GestationDraw,
  olderBirth: Day,
  span: SpanOfRecords,
): Start | null {
  const birth = olderBirth + chance.whole(380, 900);
  const enrolled = Math.max(span.first, birth + drawAgeAtEnrolment(chance));
  const gestation = drawGestation(false);
  const young = enrolled < addMonths(birth, 30);
  return young && enrolled <= span.last - 25 ? { birth, enrolled, gestation } : null;
}

function drawAgeAtEnrolment(chance: Chance): number {
  const [from, to] = chance.weighted(
    [
      [12, 90],
      [91, 270],
      [271, 540],
      [541, 850],
    ] as const,
    [34, 34, 20, 12],
  );
  return chance.whole(from, to);
}

function childOf(chance: Chance, start: Start, home: Home, span: SpanOfRecords): Unnumbered {
  const { birth, enrolled, gestation } = start;
  return {
    birth,
    gestation,
    clock: ageClock(birth, gestation.days, SAMPLE_CORRECTION),
    family: home.family,
    homeLanguage: home.homeLanguage,
    stays: drawStays(chance, home.site, birth, enrolled, span.last),
  };
}
