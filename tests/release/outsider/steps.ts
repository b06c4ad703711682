import { type Sum, sumOf, type Unknowns } from "./model";

interface Step {
  readonly evaluated: "no" | "in time" | "other";
  readonly answer: "none" | "yes" | "no";
  readonly hasPlan: boolean;
  readonly isJudged: boolean;
  readonly plan: "in time" | (typeof LATE)[number] | null;
  readonly column: number;
}

const LATE = ["late, family reason", "late, program reason", "late, no reason named", "closed before day 45"] as const;

/** The referrals of a period by the steps they took, in every way that METHOD.md, section 6, allows. */
export class Steps {
  private readonly steps: readonly Step[];

  constructor(unknowns: Unknowns) {
    this.steps = (["no", "in time", "other"] as const).flatMap((evaluated) =>
      (["none", "yes", "no"] as const).flatMap((answer) =>
        [false, true].flatMap((hasPlan) =>
          [false, true].flatMap((isJudged) =>
            ([null, "in time", ...LATE] as const)
              .filter((plan) => canBe({ evaluated, answer, hasPlan, isJudged, plan }))
              .map((plan) => ({ evaluated, answer, hasPlan, isJudged, plan, column: unknowns.column() })),
          ),
        ),
      ),
    );
  }

  all(): Sum {
    return this.sum(() => true);
  }

  /** What a row of the table prints. */
  cells(row: string): Readonly<Record<string, Sum>> {
    const is = (test: (step: Step) => boolean) => this.sum(test);
    const judged = is(({ isJudged }) => isJudged);
    const planJudged = is(({ plan }) => plan !== null);
    const late = is(({ plan }) => plan !== null && plan !== "in time");
    const cells: Readonly<Record<string, Readonly<Record<string, Sum>>>> = {
      referred: { of: this.all(), count: this.all() },
      received: { of: this.all(), count: this.all() },
      evaluated: {
        of: this.all(),
        count: is(({ evaluated }) => evaluated !== "no"),
        within45: is(({ evaluated }) => evaluated === "in time"),
        of45: judged,
      },
      eligible: { of: is(({ answer }) => answer !== "none"), count: is(({ answer }) => answer === "yes") },
      plan: {
        of: is(({ answer }) => answer === "yes"),
        count: is(({ answer, hasPlan }) => answer === "yes" && hasPlan),
        within45: is(({ plan }) => plan === "in time"),
        of45: planJudged,
      },
    };
    return cells[row] ?? { of: late, count: is(({ plan }) => plan === row) };
  }

  private sum(test: (step: Step) => boolean): Sum {
    return sumOf(this.steps.filter(test).map(({ column }) => column));
  }
}

function canBe({ evaluated, answer, hasPlan, isJudged, plan }: Omit<Step, "column">): boolean {
  if (evaluated === "no" && answer !== "none") return false;
  if (evaluated === "in time" && !isJudged) return false;
  // no plan is due where the child was found not eligible
  if ((plan !== null) !== (isJudged && answer !== "no")) return false;
  return plan !== "in time" || hasPlan;
}
