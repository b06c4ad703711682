import { type Day, isoOf } from "../age/day";
import { addMonths } from "../age/months";
import type { SheetOut } from "../workbook/sheets";
import { drawAttainment } from "./attainment";
import { drawChildren, type SampleChild, type SpanOfRecords } from "./children";
import { drawLosses } from "./losses";
import { drawObservations, type SampleObservation, type Truth } from "./observations";
import { CLUSTER, MONTHS_OF_RECORDS, USUAL_END } from "./program";
import { plantFaults } from "./faults/faults";
import type { PlantedFault } from "./faults/draft";
import { drawRatings } from "./ratings";
import { drawSteps } from "./referral-steps";
import { drawReferrals, monthsOf, type SampleReferral } from "./referrals";
import { ratingsTable, referralsTable, signsTable } from "./service-tables";
import { sheetOf } from "./sheets";
import { drawSigns } from "./signs";
import { childrenTable, observationsTable, type SampleTable, skillsTable } from "./tables";
import { drawVisits } from "./visits";

export interface SampleOptions {
  /** How many children were ever enrolled. */
  readonly children: number;
  readonly seed: number;
  /** Last day of the records; 2026-09-30 when left out. */
  readonly endDate?: Day;
  /** True plants the usual faults of real spreadsheets, and leaves out the second observers, so that every finding is planted. */
  readonly defects?: boolean;
}

export interface Sample {
  readonly sheets: readonly SheetOut[];
  readonly tables: readonly SampleTable[];
  /** What the sample knows to be true and the records only show in part. */
  readonly truth: SampleTruth;
  /** Empty unless faults were asked for. */
  readonly faults: readonly PlantedFault[];
}

export interface SampleTruth extends Truth {
  readonly span: SpanOfRecords;
  readonly observations: readonly SampleObservation[];
  readonly referrals: readonly SampleReferral[];
  readonly cluster: PlantedCluster;
}

/** The one true cluster: far more referrals of one area at one site in these months than at other times. */
export interface PlantedCluster {
  readonly site: string;
  readonly area: string;
  /** `2026-01` */
  readonly firstMonth: string;
  readonly lastMonth: string;
  /** Referrals that the plant made. */
  readonly planted: number;
}

/**
 * The invented Alder Fork program: the same options give the same workbook on every machine.
 *
 * @throws {RangeError} when the number of children or the seed is not a whole number in range
 */
export function makeSample(options: SampleOptions): Sample {
  requireWhole("children", options.children, 1, 20_000);
  requireWhole("seed", options.seed, 0, 2_147_483_647);
  const span = spanEnding(options.endDate ?? USUAL_END);
  const truth = drawTruth(options, span);
  const tables = tablesOf(truth, options.seed);
  const plain = { sheets: tables.map(sheetOf), faults: [] };
  return { ...(options.defects ? plantFaults(tables, span.last) : plain), tables, truth };
}

function drawTruth({ children: count, seed, defects = false }: SampleOptions, span: SpanOfRecords): SampleTruth {
  const children = drawChildren(count, seed, span);
  const attained = drawAttainment(
    children.map((child) => child.clock),
    seed,
  );
  const losses = drawLosses(children, attained, seed, span.last);
  const known = { children, attained, losses };
  const observations = drawObservations(known, drawVisits(children, seed, span.last, !defects), seed);
  const referrals = drawReferrals(children, seed, span);
  return { ...known, span, observations, referrals, cluster: clusterOf(referrals, span) };
}

function tablesOf(truth: SampleTruth, seed: number): SampleTable[] {
  const { children, span, losses, referrals } = truth;
  const visits = drawVisits(children, seed, span.last, false);
  return [
    childrenTable(children),
    observationsTable(children, truth.observations, span.last),
    skillsTable(),
    referralsTable(children, referrals, drawSteps(referrals, seed, span.last)),
    signsTable(children, drawSigns(children, visits, losses, seed, span.last)),
    ratingsTable(children, drawRatings(children, seed, span.last)),
  ];
}

function spanEnding(last: Day): SpanOfRecords {
  return { first: addMonths(last + 1, -MONTHS_OF_RECORDS), last };
}

function clusterOf(referrals: readonly SampleReferral[], span: SpanOfRecords): PlantedCluster {
  const months = monthsOf(span);
  const name = (back: number): string => isoOf(months[months.length - 1 - back]?.first ?? span.first).slice(0, 7);
  return {
    site: CLUSTER.site,
    area: CLUSTER.area,
    firstMonth: name(CLUSTER.firstMonthsBack),
    lastMonth: name(CLUSTER.lastMonthsBack),
    planted: referrals.filter((referral) => referral.planted).length,
  };
}

function requireWhole(name: string, value: number, from: number, to: number): void {
  if (!Number.isInteger(value) || value < from || value > to) {
    throw new RangeError(`makeSample: ${name} must be a whole number from ${from} to ${to}`);
  }
}

export type { PlantedFault, SampleChild, SampleObservation, SampleReferral, SampleTable };
