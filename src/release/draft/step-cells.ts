import type { Referrals } from "../../records/records";
import { countedReferrals } from "../../tables/referrals-counted";
import { LATE_WORDS, type Timed, TimedReferrals } from "../../tables/referral-steps-times";
import { LOSS } from "./builder";
import type { Drafting } from "./drafting";
import type { RowCells } from "./entries";
import { ALL_AGES, keyOf, periodTo } from "./keys";
import { peopleIn } from "./people";
import { totalReferrals } from "./referral-total";

/** A set of the referrals of the period, under the name that keys and places give it. */
interface Kind {
  readonly name: string;
  readonly is: (step: Timed) => boolean;
}

const ALL: Kind = { name: "referred", is: () => true };
const RECEIVED: Kind = { name: "received", is: (step) => step.received !== null };
const EVALUATED: Kind = { name: "evaluated", is: (step) => RECEIVED.is(step) && step.evaluated !== null };
const ANSWERED: Kind = { name: "evaluated, answered", is: (step) => EVALUATED.is(step) && step.isEligible !== null };
const ELIGIBLE: Kind = { name: "eligible", is: (step) => ANSWERED.is(step) && step.isEligible === true };
const PLANNED: Kind = { name: "with a plan", is: (step) => ELIGIBLE.is(step) && step.plan !== null };
const WITHIN: Kind = { name: "plan within 45 days", is: (step) => step.timeliness === "within" };
const LATE: Kind = { name: "late", is: (step) => step.timeliness === "late" };
const JUDGED: Kind = { name: "judged against 45 days", is: (step) => WITHIN.is(step) || LATE.is(step) };
const ANY_LATE: Kind = {
  name: "late, whatever the reason",
  is: (step) => LATE.is(step) || step.timeliness === "family",
};
const IN_TIME: Kind = { name: "with a plan within 45 days", is: (step) => PLANNED.is(step) && WITHIN.is(step) };
const PLANNED_LATE: Kind = { name: "with a plan, late", is: (step) => PLANNED.is(step) && !WITHIN.is(step) };
const WITH_DUE_PLAN: Kind = {
  name: "planned of those due",
  is: (step) => RECEIVED.is(step) && step.isEligible !== false && step.plan !== null,
};

export interface StepRow {
  readonly step: string;
  readonly count: Kind;
  readonly of: Kind;
  /** Who must have come that far for a median to be shown. */
  readonly median?: Kind;
  readonly judges?: true;
}

/** In the order of the table. */
export const ROWS: readonly StepRow[] = [
  { step: "referred", count: ALL, of: ALL },
  { step: "received", count: RECEIVED, of: ALL },
  { step: "evaluated", count: EVALUATED, of: RECEIVED, median: EVALUATED },
  { step: "eligible", count: ELIGIBLE, of: ANSWERED },
  { step: "plan", count: PLANNED, of: ELIGIBLE, median: WITH_DUE_PLAN, judges: true },
  ...LATE_WORDS.map(([reason, words]): StepRow => {
    const count = { name: words, is: (step: Timed) => ANY_LATE.is(step) && step.lateReason === reason };
    return { step: words, count, of: ANY_LATE };
  }),
];

/** The cells of the steps, what is left over of each, and the equations between them. */
export class StepCells {
  private readonly all: readonly (Timed & { readonly child: number })[];

  constructor(private readonly drafting: Drafting) {
    const { cohort, records, settings, from, asOf } = drafting.context;
    const { counted } = countedReferrals(cohort, records.referrals as Referrals, [from, asOf], settings.edges);
    const timed = new TimedReferrals(drafting.context).all;
    this.all = counted.map(({ child }, at) => ({ ...(timed[at] as Timed), child }));
    this.splits(EVALUATED, ANSWERED);
    this.splits(ALL, JUDGED);
    this.splits(JUDGED, WITHIN);
    this.splits(ANY_LATE, LATE);
    this.tieTimeToSteps();
    const reasons = ROWS.slice(-LATE_WORDS.length).map(({ count }) => this.cell(count));
    drafting.builder.adds(this.cell(ANY_LATE), reasons);
  }

  row({ count, of, median, judges }: StepRow): RowCells {
    this.splits(of, count);
    const counts = { count: this.cell(count, true), of: this.cell(of, true) };
    const share = [counts.count, counts.of];
    const shares = { share, lower: share, upper: share };
    return {
      counts: judges ? { ...counts, within45: this.cell(WITHIN, true), of45: this.cell(JUDGED, true) } : counts,
      figures: median ? { ...shares, medianDays: [this.cell(RECEIVED, true), counts.count] } : shares,
    };
  }

  mayShowMedian({ median }: StepRow): boolean {
    const { families, context } = this.drafting;
    return median !== undefined && this.people(median.is, families).contributors >= context.settings.minimumCell;
  }

  /** A whole, a part of it, and what is left over. */
  private splits(whole: Kind, part: Kind): void {
    if (whole === part) return;
    const rest = { name: `${whole.name}, not ${part.name}`, is: (step: Timed) => whole.is(step) && !part.is(step) };
    this.drafting.builder.adds(this.cell(whole), [this.cell(part), this.cell(rest)]);
  }

  /**
   * A plan within the 45 days is read as one of those found eligible, as long as the records hold no other: then eligible
   * less within is a count, and so is a plan that came later.
   */
  private tieTimeToSteps(): void {
    const hasOther = this.all.some((step) => WITHIN.is(step) && !PLANNED.is(step));
    if (hasOther) this.splits(WITHIN, IN_TIME);
    const inTime = hasOther ? IN_TIME : WITHIN;
    this.splits(ELIGIBLE, inTime);
    this.splits(ANY_LATE, PLANNED_LATE);
    this.drafting.builder.adds(this.cell(PLANNED), [this.cell(inTime), this.cell(PLANNED_LATE)]);
  }

  private cell({ name, is }: Kind, isPrinted = false): number {
    const { builder, context, families } = this.drafting;
    if (name === ALL.name)
      return totalReferrals(
        this.drafting,
        this.all.map(({ child }) => child),
      );
    const head = {
      population: "referral steps",
      ...periodTo(context.from, context.asOf),
      group: "",
      subject: "",
    };
    return builder.cell({
      key: keyOf({ ...head, ages: ALL_AGES, column: name }),
      place: `referral-steps: ${name}`,
      ...this.people(is, families),
      showing: isPrinted ? "table" : "never",
      loss: LOSS.figure,
      zeroIsSecret: context.settings.wholeGroups === "hide" && this.all.length > 0,
    });
  }

  private people(is: Kind["is"], families: Drafting["families"]) {
    return peopleIn(
      families,
      this.all.flatMap((step) => (is(step) ? [step.child] : [])),
    );
  }
}
