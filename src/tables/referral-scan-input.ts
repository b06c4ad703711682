import { firstDayOfMonth, monthOf, personTime } from "../cohort/person-time";
import type { ScanInput, ScanStratum } from "../statistics/scan";
import type { TableContext } from "./context";
import { areasOf, type CountedReferral, countedReferrals, type Sites, sitesOf } from "./referrals-counted";

/** The place of a program that records no sites. */
const ONE_PLACE = "all";

/** What is scanned: layer 0 is every referral, each area has a layer of its own. */
export interface ScannedReferrals {
  readonly input: ScanInput;
  readonly places: readonly string[];
  readonly areas: readonly string[];
  /** As `monthOf` counts them. */
  readonly firstMonth: number;
}

/** Referrals and child-months of the last `scanMonths`, by place and month. */
export function scannedReferrals(context: TableContext): ScannedReferrals {
  const { asOf, settings } = context;
  const firstMonth = monthOf(asOf) - settings.scanMonths + 1;
  const sites = sitesOf(context.cohort) ?? onePlace(context);
  return { ...scanInput(context, sites, firstMonth), places: sites.names, firstMonth };
}

function onePlace({ cohort }: TableContext): Sites {
  return { names: [ONE_PLACE], ofEnrolment: new Int32Array(cohort.enrolments.child.length) };
}

function scanInput(context: TableContext, sites: Sites, firstMonth: number): { input: ScanInput; areas: string[] } {
  const { cohort, asOf, settings, records } = context;
  if (records.referrals === null) throw new RangeError("referralScan: the workbook has no Referrals");
  const span = [firstDayOfMonth(firstMonth), asOf] as const;
  const { counted } = countedReferrals(cohort, records.referrals, span, settings.edges);
  const areas = areasOf(cohort, counted);
  const months = settings.scanMonths;
  const cells = sites.names.length * months;
  const cellOf = (enrolment: number, month: number) =>
    (sites.ofEnrolment[enrolment] as number) * months + month - firstMonth;
  const observed = new Int32Array((1 + areas.length) * cells);
  for (const each of counted) {
    for (const layer of layersOf(each, areas)) observed[layer * cells + cellOf(each.enrolment, each.month)]! += 1;
  }
  const weights = settings.edges.concat(0).map(() => new Float64Array(cells));
  const time = personTime(cohort, ...span, settings.edges);
  time.days.forEach((days, row) => {
    weights[time.band[row] as number]![cellOf(time.enrolment[row] as number, time.month[row] as number)]! += days;
  });
  const shape = { layers: 1 + areas.length, places: Math.max(1, sites.names.length), periods: months };
  return { input: { shape, observed, strata: strataOf(counted, areas, weights) }, areas };
}

/** Referrals of one age band that name the same areas, in an order of their own: chance is drawn stratum by stratum. */
function strataOf(
  counted: readonly CountedReferral[],
  areas: readonly string[],
  weights: readonly Float64Array[],
): ScanStratum[] {
  const strata = new Map<string, { draws: number; weights: Float64Array; layers: number[] }>();
  for (const referral of counted) {
    const layers = layersOf(referral, areas);
    const key = JSON.stringify([referral.band, layers]);
    const stratum = strata.get(key) ?? { draws: 0, weights: weights[referral.band] as Float64Array, layers };
    stratum.draws += 1;
    strata.set(key, stratum);
  }
  return [...strata].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, stratum]) => stratum);
}

function layersOf({ areas: named }: CountedReferral, areas: readonly string[]): number[] {
  return [0, ...areas.flatMap((area, at) => (named.includes(area) ? [at + 1] : []))];
}
