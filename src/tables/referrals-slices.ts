import { bandLabel } from "../age/bands";
import { DAYS_PER_MEAN_MONTH } from "../age/months";
import { type PersonTime, personTime, quarterLabel, quarterOf } from "../cohort/person-time";
import { expectedCount, stratumRates } from "../statistics/standardise";
import type { TableContext } from "./context";
import { areasOf, type CountedReferral, type CountedReferrals, countedReferrals, sitesOf } from "./referrals-counted";

export const DIMENSIONS = ["site", "area", "band", "quarter", "source", "site and area"] as const;
export type Dimension = (typeof DIMENSIONS)[number];

/** One value of one dimension: who was followed there for how long, and who was referred. */
export interface Slice {
  readonly value: string;
  readonly children: number;
  readonly childMonths: number;
  readonly referrals: number;
  readonly childrenReferred: number;
  /** Null where nothing is expected of the dimension. */
  readonly expected: number | null;
}

export interface ReferralSlices extends CountedReferrals {
  readonly slices: ReadonlyMap<Dimension, readonly Slice[]>;
  readonly hasSites: boolean;
}

/** Child-months and counted referrals of the period, put together in every dimension (METHOD.md, section 6). */
export function referralSlices(context: TableContext): ReferralSlices {
  const { cohort, settings, from, asOf, records } = context;
  if (records.referrals === null) throw new RangeError("referralSlices: the workbook has no Referrals");
  const counts = countedReferrals(cohort, records.referrals, [from, asOf], settings.edges);
  const sites = sitesOf(cohort);
  const program = new Program(context, counts.counted);
  const siteOf = (enrolment: number) => sites?.ofEnrolment[enrolment] as number;
  const ofSite = (site: number, name: string, area?: string) =>
    program.slice(name, {
      ofTime: (row) => siteOf(program.time.enrolment[row] as number) === site,
      ofReferral: ({ enrolment, areas }) => siteOf(enrolment) === site && (area === undefined || areas.includes(area)),
      rates: program.ratesOf(area),
    });
  const bySite = (sites?.names ?? []).map((name, site) => ofSite(site, name)).filter(hasTime);
  const siteIndex = (name: string) => sites?.names.indexOf(name) as number;
  const areas = areasOf(cohort, counts.counted);
  const slices = new Map<Dimension, readonly Slice[]>([
    ["site", bySite],
    ["area", areas.map((area) => program.slice(area, { ofReferral: (each) => each.areas.includes(area) }))],
    ["band", program.bands()],
    ["quarter", program.quarters()],
    ["source", program.sources()],
    [
      "site and area",
      bySite.flatMap(({ value }) => areas.map((area) => ofSite(siteIndex(value), `${value} / ${area}`, area))),
    ],
  ]);
  return { ...counts, slices, hasSites: sites !== null };
}

interface Choice {
  /** All time where left out. */
  readonly ofTime?: (row: number) => boolean;
  readonly ofReferral: (referral: CountedReferral) => boolean;
  /** Rates by band that say what is expected. */
  readonly rates?: Float64Array;
}

/** The time and the referrals of the whole program, from which slices are cut. */
class Program {
  readonly time: PersonTime;
  private readonly daysByBand: Float64Array;

  constructor(
    private readonly context: TableContext,
    private readonly counted: readonly CountedReferral[],
  ) {
    const { cohort, from, asOf, settings } = context;
    this.time = personTime(cohort, from, asOf, settings.edges);
    this.daysByBand = this.days(() => true);
  }

  /** Referrals for each day followed, by band; of one area where it is named. */
  ratesOf(area?: string): Float64Array {
    const byBand = new Float64Array(this.daysByBand.length);
    for (const { band, areas } of this.counted) if (area === undefined || areas.includes(area)) byBand[band]! += 1;
    return stratumRates(byBand, this.daysByBand);
  }

  bands(): Slice[] {
    const { edges } = this.context.settings;
    const rate = this.counted.length / Math.max(1, sum(this.daysByBand));
    return [...this.daysByBand.keys()]
      .map((band) =>
        this.slice(bandLabel(band, edges), {
          ofTime: (row) => this.time.band[row] === band,
          ofReferral: (referral) => referral.band === band,
          rates: this.daysByBand.map(() => rate),
        }),
      )
      .filter(hasTime);
  }

  quarters(): Slice[] {
    const quarters = [...new Set(this.time.month.map(quarterOf))].sort((a, b) => a - b);
    return quarters.map((quarter) =>
      this.slice(quarterLabel(quarter), {
        ofTime: (row) => quarterOf(this.time.month[row] as number) === quarter,
        ofReferral: ({ month }) => quarterOf(month) === quarter,
        rates: this.ratesOf(),
      }),
    );
  }

  sources(): Slice[] {
    const sources = [...new Set(this.counted.map(({ source }) => source))].sort();
    return sources.map((source) => this.slice(source, { ofReferral: (referral) => referral.source === source }));
  }

  slice(value: string, { ofTime = () => true, ofReferral, rates }: Choice): Slice {
    const days = this.days(ofTime);
    const referrals = this.counted.filter(ofReferral);
    return {
      value,
      children: new Set(this.time.child.filter((_, row) => ofTime(row))).size,
      childMonths: sum(days) / DAYS_PER_MEAN_MONTH,
      referrals: referrals.length,
      childrenReferred: new Set(referrals.map(({ child }) => child)).size,
      expected: rates ? expectedCount(days, rates) : null,
    };
  }

  private days(ofTime: (row: number) => boolean): Float64Array {
    const days = new Float64Array(this.context.settings.edges.length + 1);
    this.time.days.forEach((each, row) => {
      if (ofTime(row)) days[this.time.band[row] as number]! += each;
    });
    return days;
  }
}

function hasTime({ childMonths }: Slice): boolean {
  return childMonths > 0;
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}
