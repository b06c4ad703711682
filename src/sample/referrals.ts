import { calendarOf, type Day, dayOf, daysInMonth } from "../age/day";
import type { SampleChild, SpanOfRecords } from "./children";
import type { Stay } from "./stays";
import { ageMonthsOn } from "../age/correction";
import { type Chance, chanceOf } from "./chance";
import { CLUSTER, REFERRALS_PER_100_CHILD_MONTHS } from "./program";
import type { SampleArea } from "./skills";

export interface SampleReferral {
  readonly child: number;
  readonly referred: Day;
  readonly areas: readonly SampleArea[];
  /** True where the planted cluster made it. */
  readonly planted: boolean;
}

const AREAS = Object.keys(REFERRALS_PER_100_CHILD_MONTHS) as SampleArea[];
const SHARE_OF_TWO_AREAS = 0.12;

/** Referrals month by month: at the usual pace everywhere, and far above it in the one planted cluster. */
export function drawReferrals(children: readonly SampleChild[], seed: number, span: SpanOfRecords): SampleReferral[] {
  const chance = chanceOf(seed, 6);
  const sent = children.map(() => new Set<SampleArea>());
  return monthsOf(span).flatMap((month, index, all) =>
    children.flatMap((child, which) => {
      const referred = chance.whole(month.first, month.last);
      const stay = stayOn(child, referred);
      if (!stay) return [];
      const before = sent[which] as Set<SampleArea>;
      const planted = inCluster(stay.site, all.length - 1 - index) && chance.yes(CLUSTER.monthlyChance);
      const areas = drawAreas(chance, ageMonthsOn(child.clock, referred), planted).filter((area) => !before.has(area));
      areas.forEach((area) => before.add(area));
      return areas.length > 0
        ? [{ child: which, referred, areas, planted: planted && areas.includes(CLUSTER.area) }]
        : [];
    }),
  );
}

/** First and last day of every calendar month of the records. */
export function monthsOf(span: SpanOfRecords): SpanOfRecords[] {
  const months: SpanOfRecords[] = [];
  for (let first = span.first; first <= span.last;) {
    const { year, month } = calendarOf(first);
    const last = Math.min(span.last, dayOf(year, month, daysInMonth(year, month)));
    months.push({ first, last });
    first = last + 1;
  }
  return months;
}

function inCluster(site: string, monthsBack: number): boolean {
  return site === CLUSTER.site && monthsBack <= CLUSTER.firstMonthsBack && monthsBack >= CLUSTER.lastMonthsBack;
}

function drawAreas(chance: Chance, ageMonths: number, planted: boolean): SampleArea[] {
  const drawn = AREAS.filter((area) => {
    const usual = (REFERRALS_PER_100_CHILD_MONTHS[area] / 100) * ageFactor(area, ageMonths);
    return chance.yes(usual) || (planted && area === CLUSTER.area);
  });
  const also = chance.pick(AREAS);
  return drawn.length === 1 && !drawn.includes(also) && chance.yes(SHARE_OF_TWO_AREAS) ? [...drawn, also] : drawn;
}

/** Motor referrals come early, those for speech in the second and third year. */
function ageFactor(area: SampleArea, ageMonths: number): number {
  if (area === "speech") return ageMonths < 12 ? 0.4 : ageMonths < 24 ? 1.5 : 1.3;
  if (area === "gross motor") return ageMonths < 12 ? 1.4 : 0.6;
  return 1;
}

/** The enrolment in force on a day, or undefined where the child is not followed. */
function stayOn(child: SampleChild, on: Day): Stay | undefined {
  return child.stays.find((stay) => stay.enrolled <= on && (stay.left === null || on < stay.left));
}
