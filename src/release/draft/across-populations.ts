import { firstDayOfMonth, monthOf, quarterOf } from "../../cohort/person-time";
import { leaversOf } from "../../tables/ratings";
import type { CellDraft } from "./builder";
import { type Drafting, isoDates } from "./drafting";
import { ALL_AGES, keyOf, periodTo, wholePeriod } from "./keys";
import { leaversCell } from "./ratings";
import { peopleIn, without } from "./people";

/** Populations that tables count, each with the words of its key. */
type Population = "ever followed" | "followed" | "left" | "referred";

/**
 * What two tables give away together: children ever followed, followed on the as-of date, followed in the period and gone
 * by its end are parts of one another, and what lies between may be few.
 */
export function tiePopulations(drafting: Drafting, tables: readonly string[]): void {
  if (tables.length < 2) return;
  const lists = listsOf(drafting);
  const all = (population: Population, people: readonly number[]) => childrenCell(drafting, population, people);
  const [ever, followed] = [all("ever followed", lists.ever), all("followed", lists.followed)];
  const [left, inPeriod] = [all("left", lists.left), all("referred", lists.inPeriod)];
  const never = (words: string, people: readonly number[]) => neverCell(drafting, words, people);
  const gone = never("followed in the period and gone by its end", lists.gone);
  const firstDay = never("left on the first day of the period", without(lists.left, lists.gone));
  const before = never("left before the period", without(without(lists.ever, lists.inPeriod), lists.left));
  drafting.builder.adds(inPeriod, [followed, gone]);
  drafting.builder.adds(left, [gone, firstDay]);
  drafting.builder.adds(ever, [inPeriod, firstDay, before]);
  if (tables.includes("ratings")) tieLeavers(drafting, left, lists.left);
  if (tables.includes("referrals")) tieLastQuarter(drafting, followed);
}

/** Children of the as-of date are among those of its quarter, which has a row of its own where the period is longer. */
function tieLastQuarter(drafting: Drafting, followed: number): void {
  const { from, asOf } = drafting.context;
  const first = firstDayOfMonth(quarterOf(monthOf(asOf)) * 3);
  if (first <= from) return;
  const { inPeriod, gone } = listsOf(drafting, first);
  const quarter = childrenCell(drafting, "referred", inPeriod, first);
  const words = "followed in the last quarter of the period and gone by its end";
  drafting.builder.adds(quarter, [followed, neverCell(drafting, words, gone)]);
}

function tieLeavers(drafting: Drafting, left: number, leftChildren: readonly number[]): void {
  const leavers = leaversOf(drafting.context);
  const sooner = neverCell(drafting, "left in the period before six months of service", without(leftChildren, leavers));
  drafting.builder.adds(left, [leaversCell(drafting, leavers, false), sooner]);
}

function listsOf({ context, families }: Drafting, from = context.from) {
  const { cohort, asOf } = context;
  const { following } = cohort;
  const ever = families.inOrder.filter((child) => following.firstDayUpTo(child, asOf) !== null);
  const left = ever.filter((child) => following.lastDayIfLeft(child, from, asOf) !== null);
  const followed = ever.filter((child) => following.enrolmentOn(child, asOf) >= 0);
  const gone = left.filter((child) => (following.lastDayIfLeft(child, from, asOf) as number) >= from);
  return { ever, left, followed, gone, inPeriod: [...followed, ...gone] };
}

function childrenCell(
  drafting: Drafting,
  population: Population,
  people: readonly number[],
  from = drafting.context.from,
): number {
  const { builder, families, context } = drafting;
  const { asOf } = context;
  const isOfPeriod = population === "left" || population === "referred";
  const span = isOfPeriod ? periodTo(from, asOf) : { when: isoDates(context).asOf };
  const draft: CellDraft = {
    key: keyOf({ population, ...span, group: "", subject: "", ages: ALL_AGES, column: "children" }),
    place: `children ${WORDS[population]}`,
    ...peopleIn(families, people),
    showing: "never",
  };
  return builder.cell(draft);
}

const WORDS: Readonly<Record<Population, string>> = {
  "ever followed": "ever followed",
  followed: "followed on the as-of date",
  left: "who left in the period",
  referred: "followed in the period",
};

function neverCell({ builder, families, context }: Drafting, words: string, people: readonly number[]): number {
  const when = wholePeriod(context.from, context.asOf);
  return builder.cell({
    key: keyOf({ population: "between tables", when, group: "", subject: "", ages: ALL_AGES, column: words }),
    place: `between the tables: ${words}`,
    ...peopleIn(families, people),
    showing: "never",
  });
}
