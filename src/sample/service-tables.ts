import type { SampleChild } from "./children";
import type { SampleRating } from "./ratings";
import type { ReferralSteps } from "./referral-steps";
import type { SampleReferral } from "./referrals";
import type { SampleSign } from "./signs";
import { idOf, type SampleTable } from "./tables";

export function referralsTable(
  children: readonly SampleChild[],
  referrals: readonly SampleReferral[],
  steps: readonly ReferralSteps[],
): SampleTable {
  return {
    name: "Referrals",
    headings: [
      "Child",
      "Referred",
      "Area",
      "Reason",
      "From",
      "To",
      "Received",
      "Evaluated",
      "Eligible",
      "Plan",
      "Late reason",
      "Closed",
    ],
    dayColumns: ["Referred", "Received", "Evaluated", "Plan", "Closed"],
    rows: referrals
      .map((referral, index) => ({ referral, step: steps[index] as ReferralSteps }))
      .sort((a, b) => a.referral.referred - b.referral.referred)
      .map(({ referral, step }) => [
        idOf(children, referral.child),
        referral.referred,
        referral.areas.join("; "),
        step.reason,
        step.from,
        step.to,
        step.received,
        step.evaluated,
        step.eligible,
        step.plan,
        step.lateReason,
        step.closed,
      ]),
  };
}

export function signsTable(children: readonly SampleChild[], signs: readonly SampleSign[]): SampleTable {
  return {
    name: "Signs",
    headings: ["Child", "Date", "Sign", "Seen", "Action"],
    dayColumns: ["Date", "Action"],
    rows: [...signs]
      .sort((a, b) => a.day - b.day)
      .map((sign) => [idOf(children, sign.child), sign.day, sign.sign, sign.seen, sign.action]),
  };
}

export function ratingsTable(children: readonly SampleChild[], ratings: readonly SampleRating[]): SampleTable {
  return {
    name: "Ratings",
    headings: ["Child", "Outcome", "Entry date", "Entry level", "Exit date", "Exit level", "Gained any skill"],
    dayColumns: ["Entry date", "Exit date"],
    rows: ratings.map((rating) => [
      idOf(children, rating.child),
      rating.outcome,
      rating.entryDay,
      rating.entryLevel,
      rating.exitDay,
      rating.exitLevel,
      rating.gained,
    ]),
  };
}
