import { type Day, isoOf } from "../age/day";
import { addMonths } from "../age/months";
import { drawAttainment, drawLate } from "./attainment";
import { drawChildren, type SampleChild, type SpanOfRecords } from "./children";
import { delayedByLosses, drawLosses } from "./losses";
import { drawObservations, type SampleObservation, type Truth } from "./observations";
import { MONTHS_OF_RECORDS, USUAL_END } from "./program";
import { plantFaults } from "./faults/faults";
import { type Draft, faultsOfDraft, type PlantedFault } from "./faults/draft";
import { clusterOf, type PlantedCluster } from "./cluster";
import { drawRatings } from "./ratings";
import { drawSteps } from "./referral-steps";
import { drawReferrals, type SampleReferral } from "./referrals";
import { ratingsTable, referralsTable, signsTable } from "./service-tables";
import { drawSigns } from "./signs";
import { SKILLS } from "./skills";
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
  readonly endDate: Day;
  /** The tables without any fault. */
  readonly tables: readonly SampleTable[];
  /** The sheets with their faults; empty unless they were asked for. */
  readonly drafts: readonly Draft[];
  /** What the sample knows to be true and the records only show in part. */
  readonly known: KnownTruth;
  /** The same in short, to be kept beside the workbook. */
  readonly truth: SampleTruth;
}

export interface KnownTruth extends Truth {
  /** 1 for each child to whom everything comes late. */
  readonly late: Uint8Array;
  readonly span: SpanOfRecords;
  readonly observations: readonly SampleObservation[];
  readonly referrals: readonly SampleReferral[];
}

/** What was planted, with days as ISO text. */
export interface SampleTruth {
  readonly program: string;
  readonly children: number;
  readonly seed: number;
  readonly endDate: string;
  readonly cluster: PlantedCluster;
  readonly losses: readonly { child: string; skill: string; from: string; restored: string | null }[];
  readonly faults: readonly PlantedFault[];
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
  const known = drawTruth(options, span);
  const tables = tablesOf(known, options.seed);
  const drafts = options.defects ? plantFaults(tables, span.last) : [];
  return { endDate: span.last, tables, drafts, known, truth: shortTruth(options, known, drafts) };
}

function drawTruth({ children: count, seed, defects = false }: SampleOptions, span: SpanOfRecords): KnownTruth {
  const children = drawChildren(count, seed, span);
  const late = drawLate(count, seed);
  const drawn = drawAttainment(
    children.map((child) => child.clock),
    late,
    seed,
  );
  const losses = drawLosses(children, drawn, seed, span.last);
  const attained = delayedByLosses(drawn, losses);
  const truth = { children, attained, losses };
  const observations = drawObservations(truth, drawVisits(children, seed, span.last, !defects), seed);
  return { ...truth, late, span, observations, referrals: drawReferrals(children, seed, span) };
}

function shortTruth({ children, seed }: SampleOptions, known: KnownTruth, drafts: readonly Draft[]): SampleTruth {
  return {
    program: "Alder Fork (invented, like every child in it)",
    children,
    seed,
    endDate: isoOf(known.span.last),
    cluster: clusterOf(known.referrals, known.span),
    losses: known.losses.map((loss) => ({
      child: known.children[loss.child]?.id ?? "",
      skill: SKILLS[loss.skill]?.id ?? "",
      from: isoOf(loss.from),
      restored: loss.restored === null ? null : isoOf(loss.restored),
    })),
    faults: drafts.flatMap(faultsOfDraft),
  };
}

function tablesOf(truth: KnownTruth, seed: number): SampleTable[] {
  const { children, span, referrals } = truth;
  const visits = drawVisits(children, seed, span.last, false);
  return [
    childrenTable(children),
    observationsTable(children, truth.observations, span.last),
    skillsTable(),
    referralsTable(children, referrals, drawSteps(referrals, seed, span.last)),
    signsTable(children, drawSigns(truth, visits, seed, span.last)),
    ratingsTable(children, drawRatings(children, seed, span.last)),
  ];
}

function spanEnding(last: Day): SpanOfRecords {
  return { first: addMonths(last + 1, -MONTHS_OF_RECORDS), last };
}

function requireWhole(name: string, value: number, from: number, to: number): void {
  if (!Number.isInteger(value) || value < from || value > to) {
    throw new RangeError(`makeSample: ${name} must be a whole number from ${from} to ${to}`);
  }
}

export type { PlantedFault, SampleChild, SampleObservation, SampleReferral, SampleTable };
