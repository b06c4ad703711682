import { bandIndex, bandLabel } from "../../age/bands";
import { type AgeClock, ageDaysOn, ageMonthsOn } from "../../age/correction";
import { attain } from "../../cohort/attainment";
import { buildCohort, clocksOf, type Cohort } from "../../cohort/cohort";
import type { Attainment } from "../../cohort/state";
import type { Records } from "../../records/records";
import type { Settings } from "../../settings/settings";
import { estimateAgeWhenMet } from "../../statistics/age-when-met";
import { ageWhenMet } from "../age-when-met";
import { type TableContext, tableContext } from "../context";
import { AgeEstimates } from "../estimates";
import { expectedByNow } from "../expected-by-now";
import { type Counted, followed, leftInPeriod, metByBand, metByBandLeft } from "../met-by-band";
import type { Table } from "../table";
import type { Choice, Dimension } from "./choices";
import { type CheckedTable, type Figure, rowOfFigure } from "./figure";
import { restrictedTo } from "./restrict";

/** A figure under one choice. */
export interface Evaluated {
  /** Null where it cannot be estimated, or nobody is in the row. */
  readonly value: number | null;
  /** Of a share, how many it is made of; the base of other figures; null where the table names none. */
  readonly of: number | null;
  /** Of a share that was counted; null where it is an estimate. */
  readonly count: number | null;
}

/** One figure under every combination of the definitions that could be defended; the run's own is the first. */
export interface DefinitionCheck {
  readonly figure: Figure;
  readonly dimensions: readonly Dimension[];
  readonly results: readonly CheckedChoice[];
}

export interface CheckedChoice extends Evaluated {
  readonly text: string;
  /** The place of its option in every dimension. */
  readonly combination: readonly number[];
}

const NOTHING: Evaluated = { value: null, of: null, count: null };

const MAKERS: Readonly<Record<CheckedTable, (context: TableContext) => Table>> = {
  "met-by-band": metByBand,
  "met-by-band-left": metByBandLeft,
  "expected-by-now": expectedByNow,
  "age-when-met": (context) => ageWhenMet(new AgeEstimates(context, null)),
};

/** Makes one figure under any choice; what choices have in common is worked out once. */
export class Evaluator {
  private readonly records: Records;
  private readonly base: TableContext;
  private readonly cohorts = new Map<string, Cohort>();
  private readonly attainments = new Map<string, Attainment>();
  private readonly estimates = new Map<string, ChildShares>();

  constructor(
    records: Records,
    private readonly settings: Settings,
    private readonly figure: Figure,
  ) {
    const isWanted = ({ id, area }: { id: string; area: string }) =>
      figure.skill === "all" ? area === figure.area : id === figure.skill;
    this.records = restrictedTo(isWanted, records);
    this.base = tableContext(buildCohort(this.records, settings), settings, records);
  }

  evaluate(choice: Choice): Evaluated {
    const context = this.contextOf(choice);
    return choice.met === "estimate" ? this.estimated(context, choice) : this.observed(context, choice);
  }

  private observed(context: TableContext, choice: Choice): Evaluated {
    const table = MAKERS[this.figure.table](context);
    // only the edges of this age group are in the table: it is the group between them, whatever they are
    const band = choice.edges.length === 0 ? null : bandLabel(this.bandOf(choice), choice.edges);
    const row = rowOfFigure(table, { ...this.figure, band });
    if (row === null) return NOTHING;
    const at = (key: string) => {
      const found = table.columns.findIndex((column) => column.key === key);
      const value = found < 0 ? null : row[found];
      return typeof value === "number" ? value : null;
    };
    return { value: at(this.figure.column), of: at("assessed") ?? at("checked") ?? at("children"), count: at("met") };
  }

  /** Of two edges it is the age group between them, of one the group above, or, before the first edge, the one below. */
  private bandOf({ edges }: Choice): number {
    return edges.length === 1 && this.figure.band?.startsWith("before ") ? 0 : 1;
  }

  /** The share met by each child's own age, averaged over the children of the age group. */
  private estimated(context: TableContext, choice: Choice): Evaluated {
    const shares = this.sharesOf(context, choice);
    const inGroup = shares.filter(({ months }) => bandIndex(months, choice.edges) === this.bandOf(choice));
    const known = inGroup.flatMap(({ share }) => (share === null ? [] : [share]));
    if (inGroup.length === 0 || known.length < inGroup.length) return NOTHING;
    const sum = known.sort((a, b) => a - b).reduce((total, share) => total + share, 0);
    return { value: sum / known.length, of: known.length, count: null };
  }

  private sharesOf(context: TableContext, choice: Choice): ChildShares {
    return kept(this.estimates, cohortKey(choice), () => childShares(context, this.figure));
  }

  private contextOf(choice: Choice): TableContext {
    const { correction, recheckDays, disagreement, edges } = choice;
    const settings = {
      ...this.settings,
      correction,
      recheckDays,
      disagreement,
      ...(edges.length > 0 ? { edges } : {}),
    };
    const cohort = kept(this.cohorts, cohortKey(choice), () => ({
      ...this.base.cohort,
      clocks: clocksOf(this.records, settings),
      disagreementIsMet: disagreement === "met",
    }));
    const attainment = kept(this.attainments, disagreement, () => attain(cohort, this.base.asOf));
    return { ...this.base, settings, cohort, attainment };
  }
}

/** Choices with the same key read the same ages and the same looks. */
function cohortKey({ correction: { belowDays, untilMonths, untilAge }, disagreement }: Choice): string {
  return [belowDays, untilMonths, untilAge, disagreement].join(" ");
}

function kept<T>(known: Map<string, T>, key: string, make: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

type ChildShares = readonly { readonly months: number; readonly share: number | null }[];

/** Of every child of the figure's group and every skill: its age, and the estimated share who met the skill by that age. */
function childShares(context: TableContext, figure: Figure): ChildShares {
  const { cohort, groups } = context;
  const { groupOf, dayOf }: Counted = figure.table === "met-by-band-left" ? leftInPeriod(context) : followed(context);
  const group = groups.values.findIndex((values) => values.every((value, at) => value === figure.groups[at]));
  const children = [...groupOf.keys()].filter((child) => groupOf[child] === group);
  const estimates = new AgeEstimates(context, null);
  return cohort.skills.flatMap((skill, index) => {
    if (figure.skill === "all" ? skill.area !== figure.area : skill.id !== figure.skill) return [];
    const ages = children.map((child) => ageDaysOn(cohort.clocks[child] as AgeClock, dayOf[child]!, skill.ageBasis));
    const { after, by } = estimates.intervalsOf(group, index);
    const columns = { after: Float64Array.from(after), by: Float64Array.from(by) };
    const { shareBy } = estimateAgeWhenMet({ ...columns, shares: [], ages });
    return children.map((child, at) => ({
      months: ageMonthsOn(cohort.clocks[child] as AgeClock, dayOf[child]!, skill.ageBasis),
      share: shareBy[at]?.share ?? null,
    }));
  });
}
