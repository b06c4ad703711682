import type { CountedReferral } from "../../tables/referrals-counted";
import { LOSS } from "./builder";
import type { Drafting } from "./drafting";
import { addingPeriod, keyOf, periodTo, wholePeriod } from "./keys";
import { type Counted, peopleIn, without } from "./people";
import type { SliceLists } from "./referral-slices";

/** What a row of referrals counts. */
export interface SliceCells {
  readonly children: number;
  readonly referrals: number;
  readonly childrenReferred: number;
}

/** The cells of the table of referrals, and the equations between its rows. */
export class ReferralCells {
  constructor(private readonly drafting: Drafting) {}

  /** Counts of a row, and what is left over of each: further referrals of a child, and children not referred. */
  add(slice: SliceLists, isPrinted: boolean): SliceCells {
    const { builder } = this.drafting;
    const own = this.cells(slice, isPrinted);
    const further = this.cell(
      slice,
      "further referrals of a child",
      extraOf(referredIn(slice), (child) => child),
    );
    const rest = this.cell(slice, "not referred", without(slice.children, referredIn(slice)));
    builder.adds(own.referrals, [own.childrenReferred, further]);
    builder.adds(own.children, [own.childrenReferred, rest]);
    return own;
  }

  /** Children followed in a row. */
  childrenOf(slice: SliceLists): number {
    return this.cells(slice).children;
  }

  /** Referrals of a whole by the rows that it is cut into; only areas overlap, and count a referral again. */
  sumReferrals(whole: SliceLists, parts: readonly SliceLists[], by: string): void {
    if (by !== "area") {
      const cells = parts.map((part) => this.cells(part).referrals);
      if (cells.length > 1 || cells[0] !== this.cells(whole).referrals) {
        this.drafting.builder.adds(this.cells(whole).referrals, cells);
      }
      return;
    }
    const again = extraOf(
      parts.flatMap(({ referrals }) => referrals),
      ({ child }) => child,
    );
    this.sum("referrals", whole, parts, { words: `referrals counted again by ${by}`, again, isAdding: true });
  }

  /** A child followed in one row is one of all, so that no row can hold more than all do. */
  sumChildren(whole: SliceLists, parts: readonly SliceLists[], by: string): void {
    const again = extraOf(
      parts.flatMap(({ children }) => children),
      (child) => child,
    );
    this.sum("children", whole, parts, { words: `children counted again by ${by}`, again });
    for (const part of parts) {
      if (this.cells(part).children === this.cells(whole).children) continue;
      const words = `followed elsewhere only, by ${by} of ${wholePeriod(...whole.period)}`;
      const elsewhere = this.cell(part, words, without(whole.children, part.children));
      this.drafting.builder.adds(this.cells(whole).children, [this.cells(part).children, elsewhere]);
    }
  }

  /** A child referred in one row may have been in another as well, or in none of the others. */
  sumChildrenReferred(whole: SliceLists, parts: readonly SliceLists[], by: string): void {
    const again = extraOf(
      parts.flatMap((part) => distinct(referredIn(part))),
      (child) => child,
    );
    this.sum("childrenReferred", whole, parts, { words: `children referred, counted again by ${by}`, again });
    for (const part of parts) {
      if (this.cells(part).childrenReferred === this.cells(whole).childrenReferred) continue;
      const others = without(distinct(referredIn(whole)), referredIn(part));
      const elsewhere = this.cell(part, `referred elsewhere only, by ${by} of ${wholePeriod(...whole.period)}`, others);
      this.drafting.builder.adds(this.cells(whole).childrenReferred, [this.cells(part).childrenReferred, elsewhere]);
    }
  }

  private sum(measure: keyof SliceCells, whole: SliceLists, parts: readonly SliceLists[], extra: Extra): void {
    const cells = parts.map((part) => this.cells(part)[measure]);
    const total = this.cells(whole)[measure];
    if (cells.length === 1 && cells[0] === total) return;
    const again = this.cell(whole, extra.words, extra.again, extra.isAdding);
    this.drafting.builder.balances(cells, [total, again]);
  }

  private cells(slice: SliceLists, isPrinted = false): SliceCells {
    const showing = isPrinted ? "table" : "never";
    const followed = { ...slice, subject: "" };
    return {
      children: this.cell(followed, "children", slice.children, false, { showing, loss: LOSS.children }),
      referrals: this.cell(
        slice,
        "referrals",
        slice.referrals.map(({ child }) => child),
        true,
        { showing, loss: LOSS.figure },
      ),
      childrenReferred: this.cell(slice, "childrenReferred", distinct(referredIn(slice)), false, {
        showing,
        loss: LOSS.figure,
      }),
    };
  }

  /** @param isAdding - counts of neighbouring periods add up */
  private cell(
    slice: SliceLists,
    column: string,
    people: Counted,
    isAdding = false,
    use: Use = { showing: "never" },
  ): number {
    const { builder, families, tags } = this.drafting;
    const { dimension, value, group, subject, ages, period } = slice;
    const ageTag = dimension === "band" ? tags.ages : "";
    return builder.cell({
      key: keyOf({ population: "referred", group, subject, ages, column, ...spanOf(period, column, isAdding, ageTag) }),
      place: `referrals: ${dimension === "all" ? "all" : `${dimension} ${value === "" ? "not recorded" : value}`}, ${WORDS[column] ?? column}`,
      ...peopleIn(families, people),
      ...use,
    });
  }
}

/** Children of the later part of a period are among those of all of it, so that they nest where both end on one day. */
const NESTING = ["children", "childrenReferred"];

function spanOf(period: SliceLists["period"], column: string, isAdding: boolean, ageTag: string) {
  if (isAdding) return { when: addingPeriod(...period), tag: ageTag };
  if (!NESTING.includes(column)) return { when: wholePeriod(...period), tag: ageTag };
  const { when, tag } = periodTo(...period);
  return { when, tag: ageTag === "" ? tag : `${tag} ${ageTag}` };
}

interface Extra {
  readonly words: string;
  readonly again: Counted;
  readonly isAdding?: boolean;
}

interface Use {
  readonly showing: "table" | "never";
  readonly loss?: number;
}

const WORDS: Readonly<Record<string, string>> = { childrenReferred: "children referred" };

function referredIn({ referrals }: SliceLists): number[] {
  return referrals.map(({ child }) => child);
}

function distinct(children: Counted): number[] {
  return [...new Set(children)];
}

/** The children behind every unit that has come before in the list. */
function extraOf<T extends number | CountedReferral>(units: readonly T[], childOf: (unit: T) => number): number[] {
  const seen = new Set<T>();
  return units.filter((unit) => seen.has(unit) || !seen.add(unit)).map(childOf);
}
