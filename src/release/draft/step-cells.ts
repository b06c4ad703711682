import type { Referrals } from "../../records/records";
import { countedReferrals } from "../../tables/referrals-counted";
import * as sets from "../../tables/referral-steps-sets";
import { type Timed, TimedReferrals } from "../../tables/referral-steps-times";
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

const ALL: Kind = { name: "referred", is: sets.isReferred };
const RECEIVED: Kind = { name: "received", is: sets.isReceived };
const EVALUATED: Kind = { name: "evaluated", is: sets.isEvaluated };
const ANSWERED: Kind = { name: "evaluated, answered", is: sets.isAnswered };
const ELIGIBLE: Kind = { name: "eligible", is: sets.isFoundEligible };
const PLANNED: Kind = { name: "with a plan", is: sets.isPlanned };
const JUDGED: Kind = { name: "judged against 45 days", is: sets.isJudged };
const EVALUATED_IN_TIME: Kind = { name: "evaluated within 45 days", is: sets.isEvaluatedInTime };
const PLAN_JUDGED: Kind = { name: "judged against 45 days, plan due", is: sets.isPlanJudged };
const WITHIN: Kind = { name: "plan within 45 days", is: sets.isPlannedInTime };
const LATE: Kind = { name: "without a plan within 45 days", is: sets.isWithoutPlanInTime };
const IN_TIME: Kind = { name: "with a plan within 45 days", is: (step) => PLANNED.is(step) && WITHIN.is(step) };
const PLANNED_LATER: Kind = { name: "with a plan, not within", is: (step) => PLANNED.is(step) && !WITHIN.is(step) };
const PLANNED_LATE: Kind = { name: "with a plan, late", is: (step) => PLANNED.is(step) && LATE.is(step) };
const WITH_DUE_PLAN: Kind = {
  name: "planned of those due",
  is: (step) => step.isEligible !== false && step.plan !== null,
};

/** What a part leaves over: who was judged and needs no plan was found not eligible, and so on. */
function restOf(whole: Kind, part: Kind): Kind {
  return { name: `${whole.name}, not ${part.name}`, is: (step) => whole.is(step) && !part.is(step) };
}

export interface StepRow {
  readonly step: string;
  readonly count: Kind;
  readonly of: Kind;
  /** Who must have come that far for a median to be shown. */
  readonly median?: Kind;
  /** Those in time, and those judged. */
  readonly judges?: readonly [within: Kind, judged: Kind];
}

/** In the order of the table. */
export const ROWS: readonly StepRow[] = [
  { step: "referred", count: ALL, of: ALL },
  { step: "received", count: RECEIVED, of: ALL },
  {
    step: "evaluated",
    count: EVALUATED,
    of: RECEIVED,
    median: EVALUATED,
    judges: [EVALUATED_IN_TIME, JUDGED],
  },
  { step: "eligible", count: ELIGIBLE, of: ANSWERED },
  { step: "plan", count: PLANNED, of: ELIGIBLE, median: WITH_DUE_PLAN, judges: [WITHIN, PLAN_JUDGED] },
  ...sets.WITHOUT_PLAN_IN_TIME.map(([words, is]): StepRow => ({ step: words, count: { name: words, is }, of: LATE })),
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
    this.splits(EVALUATED, EVALUATED_IN_TIME);
    this.splits(ALL, JUDGED);
    this.splits(JUDGED, EVALUATED_IN_TIME);
    this.splits(JUDGED, PLAN_JUDGED);
    this.splits(restOf(ANSWERED, ELIGIBLE), restOf(JUDGED, PLAN_JUDGED));
    drafting.builder.adds(this.cell(PLAN_JUDGED), [this.cell(WITHIN), this.cell(LATE)]);
    this.tieTimeToSteps();
    const reasons = ROWS.slice(-sets.WITHOUT_PLAN_IN_TIME.length).map(({ count }) => this.cell(count));
    drafting.builder.adds(this.cell(LATE), reasons);
  }

  row({ count, of, median, judges }: StepRow): RowCells {
    this.splits(of, count);
    const counts = { count: this.cell(count, true), of: this.cell(of, true) };
    const share = [counts.count, counts.of];
    const shares = { share, lower: share, upper: share };
    return {
      counts: judges ? { ...counts, within45: this.cell(judges[0], true), of45: this.cell(judges[1], true) } : counts,
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
    this.drafting.builder.adds(this.cell(whole), [this.cell(part), this.cell(restOf(whole, part))]);
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
    this.splits(LATE, PLANNED_LATE);
    this.splits(PLANNED_LATER, PLANNED_LATE);
    this.drafting.builder.adds(this.cell(PLANNED), [this.cell(inTime), this.cell(PLANNED_LATER)]);
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
