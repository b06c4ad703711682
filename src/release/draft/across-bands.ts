import { bandIndex } from "../../age/bands";
import { type AgeClock, ageMonthsOn } from "../../age/correction";
import type { Day } from "../../age/day";
import { NOT_FOLLOWED } from "../../cohort/following";
import type { BoxCells } from "./box-cells";
import { AT } from "./box-columns";
import type { Drafting } from "./drafting";
import { ALL_AGES, bandSpan, keyOf, wholePeriod } from "./keys";
import { type Counted, peopleIn, without } from "./people";
import { ReferralCells } from "./referral-cells";
import { ReferralLists } from "./referral-slices";

/** Children by age band: in the program on the as-of date, and on their last day. */
interface InBands {
  readonly followed: BoxCells | null;
  readonly left: BoxCells | null;
}

/**
 * Ties referrals to the tables by age band. Ages only grow: who was followed in a band in the period is in it on the
 * as-of date, was in it on a last day in the period, or has passed into a later one. Whoever left on the first day of the
 * period was not followed in it, since the last day lies before.
 */
export function tieBands(drafting: Drafting, { followed, left }: InBands): void {
  const { builder, context, scopes } = drafting;
  const { cohort } = context;
  const corrected = cohort.skills.findIndex(({ ageBasis }) => ageBasis === "corrected");
  if (corrected < 0 || (followed === null && left === null)) return;
  const rows = new ReferralLists(context).byBand();
  const cells = new ReferralCells(drafting);
  const bands = Array.from({ length: context.settings.edges.length + 1 }, (_, band) => standingIn(drafting, band));
  const now = bands.map(({ ages, here, gone }, band) => {
    const held = followed?.isHeld(scopes.all, corrected, band);
    const there = held
      ? followed!.cell(scopes.all, corrected, band, AT.children)
      : restCell(drafting, ages, HERE, here);
    return [there, restCell(drafting, ages, GONE_IN_BAND, gone)];
  });
  builder.adds(
    restCell(
      drafting,
      ALL_AGES,
      GONE,
      bands.flatMap(({ gone }) => gone),
    ),
    now.map(([, gone]) => gone as number),
  );
  bands.forEach(({ ages, here, gone, sooner }, band) => {
    if (left?.isHeld(scopes.all, corrected, band)) {
      const own = left.cell(scopes.all, corrected, band, AT.children);
      builder.adds(own, [now[band]![1] as number, restCell(drafting, ages, SOONER, sooner)]);
    }
    const row = rows.find((each) => each.ages === ages);
    if (!row) return;
    const later = bands.slice(band + 1).flatMap((each) => [...each.here, ...each.gone]);
    const passed = without(row.children, [...here, ...gone]);
    const passedCells = later.length === 0 ? [] : [restCell(drafting, ages, PASSED, passed)];
    builder.adds(cells.childrenOf(row), [...now[band]!, ...passedCells]);
    if (passedCells.length === 0) return;
    const others = restCell(
      drafting,
      ages,
      "older, and not followed in the band in the period",
      without(later, passed),
    );
    builder.balances(now.slice(band + 1).flat(), [...passedCells, others]);
  });
}

const HERE = "in the program on the as-of date";
/** As the count over all ages is called between the populations. */
const GONE = "followed in the period and gone by its end";
const GONE_IN_BAND = "gone by the end of the period, in the band on the last day";
const SOONER = "left on the first day of the period";
const PASSED = "followed in the band in the period, older since";

interface Standing {
  readonly ages: string;
  readonly here: Counted;
  /** By the band of the last day, which lies in the period; sooner: on the day before it. */
  readonly gone: Counted;
  readonly sooner: Counted;
}

function standingIn({ context }: Drafting, band: number): Standing {
  const { cohort, settings, from, asOf } = context;
  const { following } = cohort;
  const isIn = (child: number, day: Day | null) =>
    day !== null && bandIndex(ageMonthsOn(cohort.clocks[child] as AgeClock, day, "corrected"), settings.edges) === band;
  const lastDay = (child: number) => following.lastDayIfLeft(child, from, asOf);
  const all = [...cohort.ids.keys()];
  const left = all.filter((child) => isIn(child, lastDay(child)));
  return {
    ages: bandSpan(band, settings.edges),
    here: all.filter((child) => following.enrolmentOn(child, asOf) !== NOT_FOLLOWED && isIn(child, asOf)),
    gone: left.filter((child) => (lastDay(child) as Day) >= from),
    sooner: left.filter((child) => (lastDay(child) as Day) < from),
  };
}

function restCell(
  { builder, families, context, tags }: Drafting,
  ages: string,
  words: string,
  people: Counted,
): number {
  const when = wholePeriod(context.from, context.asOf);
  const tag = ages === ALL_AGES ? "" : tags.ages;
  return builder.cell({
    key: keyOf({ population: "between tables", when, group: "", subject: "", ages, column: words, tag }),
    place: `between the tables: ${words}${ages === ALL_AGES ? "" : `, ages ${ages}`}`,
    ...peopleIn(families, people),
    showing: "never",
  });
}
