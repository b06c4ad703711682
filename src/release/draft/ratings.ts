import type { CategoryOrOpen } from "../../records/services/progress-category";
import type { Ratings } from "../../records/records";
import { categoryByChild, leaversOf, ratings, RATINGS_NOTES, scaleOf } from "../../tables/ratings";
import type { DraftTable } from "../release-table";
import { LOSS } from "./builder";
import type { Drafting } from "./drafting";
import { draftRow, type RowCells } from "./entries";
import { ALL_AGES, keyOf, periodTo } from "./keys";
import { type Counted, peopleIn, without } from "./people";
import { flagShare } from "./whole-groups";

const ID = "ratings";
const CATEGORIES: readonly CategoryOrOpen[] = ["a", "b", "a or b", "c", "d", "e"];
/** Numerator and denominator of each summary statement. */
const STATEMENTS: readonly (readonly [count: readonly CategoryOrOpen[], of: readonly CategoryOrOpen[]])[] = [
  [
    ["c", "d"],
    ["a", "b", "a or b", "c", "d"],
  ],
  [["d", "e"], CATEGORIES],
];

/** Table 6. Coverage gives those who left back beside those rated, so they are a count of the release. */
export function draftRatings(drafting: Drafting): DraftTable {
  const { context, builder } = drafting;
  const { id, title, population, columns, rows } = ratings(context);
  const leavers = leaversOf(context);
  const outcomes = [...new Set((context.records.ratings as Ratings).outcome)].sort();
  const drafted = outcomes.flatMap((outcome, index) => {
    const cells = new OutcomeCells(drafting, outcome, leavers);
    return STATEMENTS.map((_, statement) => {
      const own = cells.row(statement);
      flagShare(drafting, `${ID}: ${outcome}, summary statement ${statement + 1}`, {
        met: own.counts["count"]!,
        of: own.counts["of"]!,
      });
      return draftRow(builder, columns, rows[index * STATEMENTS.length + statement] ?? [], own);
    });
  });
  return { id, title, population, columns, rows: drafted, notes: RATINGS_NOTES };
}

/** The cell of those who left after six months of service or more. */
export function leaversCell(
  { builder, context, families }: Drafting,
  leavers: Iterable<number>,
  isPrinted: boolean,
): number {
  return builder.cell({
    key: keyOf({
      population: "left after six months",
      ...periodTo(context.from, context.asOf),
      group: "",
      subject: "",
      ages: ALL_AGES,
      column: "children",
    }),
    place: `${ID}: children who left after six months of service or more`,
    ...peopleIn(families, [...leavers]),
    showing: isPrinted ? "table" : "never",
    loss: LOSS.children,
  });
}

function columnOf(category: CategoryOrOpen): string {
  return category === "a or b" ? "aOrB" : category;
}

class OutcomeCells {
  private readonly categories: ReadonlyMap<number, CategoryOrOpen>;
  private readonly leavers: number;

  constructor(
    private readonly drafting: Drafting,
    private readonly outcome: string,
    leavers: ReadonlySet<number>,
  ) {
    const { builder, context } = drafting;
    this.categories = categoryByChild(context.records.ratings as Ratings, outcome, leavers, scaleOf(context));
    this.leavers = leaversCell(drafting, leavers, true);
    const unrated = this.cell(
      "unrated",
      "left without a rating",
      without([...leavers], this.categories.keys()),
      "never",
    );
    builder.adds(this.leavers, [this.sumOf(CATEGORIES), unrated]);
    CATEGORIES.forEach((category) => this.category(category));
  }

  row(statement: number): RowCells {
    const { builder } = this.drafting;
    const [countOf, ofWhich] = STATEMENTS[statement]!;
    const [count, of] = [this.sumOf(countOf), this.sumOf(ofWhich)];
    const rest = CATEGORIES.filter((each) => ofWhich.includes(each) && !countOf.includes(each));
    builder.adds(of, [count, this.sumOf(rest, "row")]);
    return {
      counts: { ...Object.fromEntries(CATEGORIES.map((each) => [columnOf(each), this.category(each)])), count, of },
      figures: { percent: [count, of], coverage: [this.sumOf(CATEGORIES), this.leavers] },
    };
  }

  private category(category: CategoryOrOpen): number {
    return this.cell(category, `category ${category}`, this.childrenIn([category]), "table", LOSS.box);
  }

  /** Every sum is of a share: a numerator, what is left of its denominator, or the denominator. */
  private sumOf(categories: readonly CategoryOrOpen[], use: "printed" | "row" = "printed"): number {
    const words = `category ${categories.join(" + ")}`;
    const children = this.childrenIn(categories);
    const cell = this.cell(categories.join("+"), words, children, use === "printed" ? "table" : "never", LOSS.figure);
    const name = `${this.outcome} ${words}`;
    if (!this.added.has(name))
      this.drafting.builder.adds(
        cell,
        categories.map((each) => this.category(each)),
      );
    this.added.add(name);
    return cell;
  }

  private readonly added = new Set<string>();

  private childrenIn(categories: readonly CategoryOrOpen[]): Counted {
    return [...this.categories].flatMap(([child, category]) => (categories.includes(category) ? [child] : []));
  }

  private cell(column: string, words: string, children: Counted, showing: "table" | "never", loss = 1): number {
    const { builder, context, families } = this.drafting;
    const isPartOfShare = column.includes("+");
    return builder.cell({
      key: keyOf({
        population: "rated",
        ...periodTo(context.from, context.asOf),
        group: "",
        subject: this.outcome,
        ages: ALL_AGES,
        column,
      }),
      place: `${ID}: ${this.outcome}, ${words}`,
      ...peopleIn(families, children),
      showing,
      loss,
      zeroIsSecret: context.settings.wholeGroups === "hide" && isPartOfShare && this.categories.size > 0,
    });
  }
}
