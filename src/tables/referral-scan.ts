import { firstDayOfMonth, monthLabel, monthOf, personTime } from "../cohort/person-time";
import { scan, type ScanInput, type ScanStratum } from "../statistics/scan";
import type { TableContext } from "./context";
import { areasOf, type CountedReferral, countedReferrals, type Sites, sitesOf } from "./referrals-counted";
import { apart } from "./referral-scan-windows";
import type { Table, TableColumn } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "place", label: "Place", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "firstMonth", label: "First month", unit: "text" },
  { key: "lastMonth", label: "Last month", unit: "text" },
  { key: "observed", label: "Referrals", unit: "count" },
  { key: "expected", label: "Expected", unit: "number" },
  { key: "ratio", label: "Observed / expected", unit: "number" },
  { key: "logLikelihoodRatio", label: "Log-likelihood ratio", unit: "number" },
  { key: "p", label: "p for all windows together", unit: "number" },
];

const REPLICATES = 999;
/** Windows listed, none of which shares a referral with one above it. */
const LISTED = 10;
export const EVERY_AREA = "all";
/** The place of a program that records no sites. */
const ONE_PLACE = "all";

/** Where and when referrals came thicker than the program's own rates by age give (METHOD.md, section 6). */
export function referralScan(context: TableContext): Table {
  const { asOf, settings } = context;
  const firstMonth = monthOf(asOf) - settings.scanMonths + 1;
  const sites = sitesOf(context.cohort) ?? onePlace(context);
  const { input, areas } = scanInput(context, sites, firstMonth);
  const maxWidth = Math.floor(settings.scanMonths / 2);
  const found = scan(input, { maxWidth, replicates: REPLICATES, seed: settings.seed });
  return {
    id: "referral-scan",
    title: "Places and months with more referrals than expected",
    population: `Children followed from ${monthLabel(firstMonth)} to ${monthLabel(monthOf(asOf))}, up to the as-of date, and the referrals made on such a day`,
    columns: COLUMNS,
    rows: apart(found.windows, LISTED).map((window) => [
      sites.names[window.place] as string,
      window.layer === 0 ? EVERY_AREA : (areas[window.layer - 1] as string),
      monthLabel(firstMonth + window.first),
      monthLabel(firstMonth + window.last),
      window.observed,
      window.expected,
      window.observed / window.expected,
      window.logLikelihoodRatio,
      window.p,
    ]),
    notes: notesOf(found.windowCount, maxWidth, settings.seed),
  };
}

function notesOf(windowCount: number, maxWidth: number, seed: number): string[] {
  return [
    `${windowCount} windows were looked at: one place, or one place and area, by up to ${maxWidth} consecutive months. p is for all of them together: the chance that any window stands out as much where nothing clusters. A p under 0.05 is rare; one alone of several listed windows may have it.`,
    `Expected is what the program's own rates by age band (of the area, where one is named) give in the child-months of the window. Each of ${REPLICATES} replicates throws every referral again, with its areas and age band, over places and months as the child-months of that band lie (seed ${seed}); p = (r + 1) / (${REPLICATES} + 1), r the replicates whose largest log-likelihood ratio reaches the window's.`,
    `At most ${LISTED} windows are listed, the most likely first, none of which shares a referral with one above it. Area "${EVERY_AREA}" counts a referral once, whatever areas it names.`,
    "Months in which nobody was followed expect nothing. The edges of a window are the best guess, and a month more or less is often nearly as likely.",
    "A cluster is a question: a new referrer, a screening day, a therapist who looks closely or a list caught up with make one as surely as a change in the children.",
  ];
}

function onePlace({ cohort }: TableContext): Sites {
  return { names: [ONE_PLACE], ofEnrolment: new Int32Array(cohort.enrolments.child.length) };
}

/** Layer 0 is every referral, each area has a layer of its own. */
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

/** Referrals of one age band that name the same areas. */
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
  return [...strata.values()];
}

function layersOf({ areas: named }: CountedReferral, areas: readonly string[]): number[] {
  return [0, ...areas.flatMap((area, at) => (named.includes(area) ? [at + 1] : []))];
}
