import { LOSS } from "./builder";
import type { Drafting } from "./drafting";
import { addingPeriod, ALL_AGES, keyOf } from "./keys";
import { type Counted, peopleIn } from "./people";

/** All referrals of the period: every expected number and ratio gives them back, so they are a count of the release. */
export function totalReferrals({ builder, context, families }: Drafting, children: Counted): number {
  const when = addingPeriod(context.from, context.asOf);
  return builder.cell({
    key: keyOf({ population: "referred", when, group: "", subject: "", ages: ALL_AGES, column: "referrals" }),
    place: "referrals: all of the period",
    ...peopleIn(families, children),
    showing: "table",
    loss: LOSS.children,
  });
}
