import { firstDayOfMonth, monthOf, personTime } from "../cohort/person-time";
import type { ScanInput, ScanStratum } from "../statistics/scan";
import type { TableContext } from "./context";
import { areasOf, type CountedReferral, countedReferrals, type Sites, sitesOf } from "./referrals-counted";

/** The place of a program that records no sites. */
const ONE_PLACE = "all";

/** What is scanned: layer 0 is every referral, each area has a layer of its own. */
export interface ScannedReferrals {
  readonly input: ScanInput;
  readonly rows: readonly ScannedReferral[];
  readonly places: readonly string[];
  readonly areas: readonly string[];
  /** As `monthOf` counts them. */
  readonly firstMonth: number;
}

/** Where a referral counts. */
export interface ScannedReferral {
  readonly child: number;
  readonly place: number;
  /** Counted from 0. */
  readonly month: number;
  readonly layers: readonly number[];
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

function scanInput(
  context: TableContext,
  sites: Sites,
  firstMonth: number,
): Pick<ScannedReferrals, "input" | "rows" | "areas"> {
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
  const strata = strataOf(
    counted,
    (referral) => layersOf(referral, areas),
    ({ band }) => weights[band] as Float64Array,
  );
  const finer = sameMonths(counted, areas, weights, { firstMonth, months });
  const rows = counted.map((referral) => ({
    child: referral.child,
    place: sites.ofEnrolment[referral.enrolment] as number,
    month: referral.month - firstMonth,
    layers: layersOf(referral, areas),
  }));
  return { input: { shape, observed, strata, finer }, rows, areas };
}

/** Each referral keeps its month beside its areas and its age band: only the place is left to chance. */
function sameMonths(
  counted: readonly CountedReferral[],
  areas: readonly string[],
  weights: readonly Float64Array[],
  { firstMonth, months }: { readonly firstMonth: number; readonly months: number },
): ScanStratum[] {
  const inMonth = new Map<string, Float64Array>();
  const weightsOf = ({ band, month }: CountedReferral) => {
    const key = `${band} ${month}`;
    const known = inMonth.get(key);
    if (known) return known;
    const made = (weights[band] as Float64Array).map((days, cell) => (cell % months === month - firstMonth ? days : 0));
    inMonth.set(key, made);
    return made;
  };
  return strataOf(
    counted,
    (referral) => layersOf(referral, areas),
    weightsOf,
    ({ month }) => month,
  );
}

/** Referrals of one age band (and month) that name the same areas, in an order of their own: chance is drawn stratum by stratum. */
function strataOf(
  counted: readonly CountedReferral[],
  layersOf: (referral: CountedReferral) => number[],
  weightsOf: (referral: CountedReferral) => Float64Array,
  monthOf: (referral: CountedReferral) => number = () => 0,
): ScanStratum[] {
  const strata = new Map<string, { draws: number; weights: Float64Array; layers: number[] }>();
  for (const referral of counted) {
    const layers = layersOf(referral);
    const key = JSON.stringify([referral.band, monthOf(referral), layers]);
    const stratum = strata.get(key) ?? { draws: 0, weights: weightsOf(referral), layers };
    stratum.draws += 1;
    strata.set(key, stratum);
  }
  return [...strata].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, stratum]) => stratum);
}

function layersOf({ areas: named }: CountedReferral, areas: readonly string[]): number[] {
  return [0, ...areas.flatMap((area, at) => (named.includes(area) ? [at + 1] : []))];
}
