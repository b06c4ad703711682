import { bandLabel } from "../../age/bands";
import type { Day } from "../../age/day";
import { firstDayOfMonth, personTime, type PersonTime, quarterLabel, quarterOf } from "../../cohort/person-time";
import type { Referrals } from "../../records/records";
import { areasOf, type CountedReferral, countedReferrals, type Sites, sitesOf } from "../../tables/referrals-counted";
import type { Dimension } from "../../tables/referrals-slices";
import type { TableContext } from "../../tables/context";
import { ALL_AGES, bandSpan, groupText } from "./keys";

/** Who was followed and who was referred in one row of the table, as lists that can be counted. */
export interface SliceLists {
  readonly dimension: Dimension | "all";
  readonly value: string;
  readonly group: string;
  readonly subject: string;
  readonly ages: string;
  readonly period: readonly [from: Day, to: Day];
  /** Children followed, once each. */
  readonly children: readonly number[];
  readonly referrals: readonly CountedReferral[];
}

/** The same rows as the table of referrals, in its order, each with the children behind it. */
export class ReferralLists {
  readonly all: SliceLists;
  readonly areas: readonly string[];
  private readonly time: PersonTime;
  private readonly counted: readonly CountedReferral[];
  private readonly sites: Sites | null;

  constructor(private readonly context: TableContext) {
    const { cohort, from, asOf, settings, records } = context;
    this.time = personTime(cohort, from, asOf, settings.edges);
    this.counted = countedReferrals(cohort, records.referrals as Referrals, [from, asOf], settings.edges).counted;
    this.sites = sitesOf(cohort);
    this.areas = areasOf(cohort, this.counted);
    this.all = this.slice("all", "", {});
  }

  bySite(): SliceLists[] {
    const names = this.sites?.names ?? [];
    return names.map((name, site) => this.slice("site", name, this.atSite(site))).filter(isHeld);
  }

  byArea(): SliceLists[] {
    return this.areas.map((area) =>
      this.slice("area", area, { subject: `area ${area}`, ofReferral: ({ areas }) => areas.includes(area) }),
    );
  }

  bySiteAndArea(site: SliceLists): SliceLists[] {
    const at = this.atSite(this.sites?.names.indexOf(site.value) ?? -1);
    return this.areas.map((area) =>
      this.slice("site and area", `${site.value} / ${area}`, {
        ...at,
        subject: `area ${area}`,
        ofReferral: (referral) => at.ofReferral(referral) && referral.areas.includes(area),
      }),
    );
  }

  byBand(): SliceLists[] {
    const { edges } = this.context.settings;
    return Array.from({ length: edges.length + 1 }, (_, band) =>
      this.slice("band", bandLabel(band, edges), {
        ages: bandSpan(band, edges),
        ofTime: (row) => this.time.band[row] === band,
        ofReferral: (referral) => referral.band === band,
      }),
    ).filter(isHeld);
  }

  byQuarter(): SliceLists[] {
    const quarters = [...new Set(this.time.month.map(quarterOf))].sort((a, b) => a - b);
    return quarters.map((quarter) =>
      this.slice("quarter", quarterLabel(quarter), {
        period: this.within(quarter),
        ofTime: (row) => quarterOf(this.time.month[row] as number) === quarter,
        ofReferral: ({ month }) => quarterOf(month) === quarter,
      }),
    );
  }

  /** Every source that the records name, also where it referred nobody in the period: a row must not say that it did. */
  bySource(): SliceLists[] {
    const sources = [...new Set((this.context.records.referrals as Referrals).from)].sort();
    return sources.map((source) =>
      this.slice("source", source, { subject: `from ${source}`, ofReferral: (referral) => referral.source === source }),
    );
  }

  private atSite(site: number) {
    const siteOf = (enrolment: number) => this.sites?.ofEnrolment[enrolment];
    return {
      group: groupText([["Site", this.sites?.names[site] ?? ""]]),
      ofTime: (row: number) => siteOf(this.time.enrolment[row] as number) === site,
      ofReferral: ({ enrolment }: CountedReferral) => siteOf(enrolment) === site,
    };
  }

  /** The part of a quarter that lies in the period. */
  private within(quarter: number): readonly [Day, Day] {
    const { from, asOf } = this.context;
    return [Math.max(from, firstDayOfMonth(quarter * 3)), Math.min(asOf, firstDayOfMonth((quarter + 1) * 3) - 1)];
  }

  private slice(dimension: SliceLists["dimension"], value: string, choice: Choice): SliceLists {
    const { group = "", subject = "", ages = ALL_AGES, period, ofTime = () => true, ofReferral = () => true } = choice;
    const children = [...new Set(this.time.child.filter((_, row) => ofTime(row)))];
    const { from, asOf } = this.context;
    const referrals = this.counted.filter(ofReferral);
    return { dimension, value, group, subject, ages, period: period ?? [from, asOf], children, referrals };
  }
}

interface Choice extends Partial<Pick<SliceLists, "group" | "subject" | "ages" | "period">> {
  readonly ofTime?: (row: number) => boolean;
  readonly ofReferral?: (referral: CountedReferral) => boolean;
}

function isHeld({ children }: SliceLists): boolean {
  return children.length > 0;
}
