import { type AgeClock, ageMonthsOn } from "../../age/correction";
import { NO_DAY } from "../../records/records";
import { EDGE, EDGE_COLUMNS } from "./edge-columns";
import type { Drafting } from "./drafting";
import { Tally } from "./tally";

/** Children ever followed, by skill and edge, in every scope. */
export class EdgeTally {
  private readonly tally: Tally;

  constructor(
    private readonly drafting: Drafting,
    private readonly groupOf: Int32Array,
  ) {
    const { cohort, settings } = drafting.context;
    this.tally = new Tally(
      drafting.scopes.list.length * cohort.skills.length * settings.edges.length * EDGE_COLUMNS.length,
    );
    for (const child of drafting.families.inOrder) if (groupOf[child]! >= 0) this.addChild(child);
  }

  of(scope: number, skill: number, edge: number, column: number): ReturnType<Tally["of"]> {
    return this.tally.of(this.indexOf(scope, skill, edge, column));
  }

  private addChild(child: number): void {
    const { context, families, scopes } = this.drafting;
    const family = families.ofChild[child] as number;
    const inScopes = scopes.ofGroup[this.groupOf[child] as number] as readonly number[];
    const ages = { corrected: new Map<number, number>(), chronological: new Map<number, number>() };
    context.cohort.skills.forEach(({ ageBasis }, skill) => {
      const standing = this.standingAtEdges(child, skill, ages[ageBasis]);
      standing.forEach((column, edge) => {
        for (const each of columnsOf(column, standing[edge + 1])) {
          for (const scope of inScopes) this.tally.add(this.indexOf(scope, skill, edge, each), family);
        }
      });
    });
  }

  /** Met, not met or not known at each edge, as the table counts it. */
  private standingAtEdges(child: number, skill: number, known: Map<number, number>): number[] {
    const { cohort, attainment, settings } = this.drafting.context;
    const clock = cohort.clocks[child] as AgeClock;
    const basis = cohort.skills[skill]!.ageBasis;
    const cell = child * attainment.skillCount + skill;
    const ageOn = (day: number) => {
      if (day === NO_DAY) return null;
      const months = known.get(day) ?? ageMonthsOn(clock, day, basis);
      known.set(day, months);
      return months;
    };
    const metMonths = ageOn(attainment.metDay[cell] as number) ?? Infinity;
    const exactMonths = attainment.exact[cell] === 1 ? metMonths : null;
    const withoutMonths = exactMonths ?? ageOn(attainment.withoutDay[cell] as number) ?? -Infinity;
    return settings.edges.map((edge) =>
      metMonths <= edge ? EDGE.met : withoutMonths >= edge ? EDGE.notMet : EDGE.notKnown,
    );
  }

  indexOf(scope: number, skill: number, edge: number, column: number): number {
    const { cohort, settings } = this.drafting.context;
    return ((scope * cohort.skills.length + skill) * settings.edges.length + edge) * EDGE_COLUMNS.length + column;
  }
}

/** All columns that hold a child, by where it stands at an edge and at the next one. */
function columnsOf(here: number, next: number | undefined): number[] {
  if (here === EDGE.met) return [EDGE.met, EDGE.possible];
  const between = next === EDGE.met ? [EDGE.metBetween] : [];
  if (here === EDGE.notKnown) return [EDGE.notKnown, EDGE.notYet, EDGE.possible, ...between];
  const given = next !== undefined && next !== EDGE.notMet ? [EDGE.notMetBetween] : [];
  return [EDGE.notMet, EDGE.notYet, ...between, ...given];
}
