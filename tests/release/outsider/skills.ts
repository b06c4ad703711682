import { type Basis, type Children, type Kind } from "./children";
import { type Sum, sumOf } from "./model";

export type Box = "hadAtFirstLook" | "gained" | "notMet" | "outOfDate" | "lost" | "notAssessed";

/** What the looks at a child up to the as-of date say of one skill, ages counted in edges that lie below them. */
export interface Ever {
  readonly is: "never" | "not met" | "had" | "interval";
  /** Edges at or below the age of the last look without it; edges below the age of the first look with it. */
  readonly without: number;
  readonly met: number;
}

interface State {
  readonly group: Kind["group"];
  readonly status: "followed" | "left" | "gone";
  readonly gone: number;
  readonly band: number;
  /** On the as-of date, or on the last day; none of those gone before every period. */
  readonly box: Box | null;
  readonly ever: Ever;
  readonly column: number;
}

export interface Skill {
  readonly id: string;
  readonly area: string;
  readonly basis: Basis;
}

/** How the children of each kind stand with one skill: every way that METHOD.md, sections 4 and 5, allows. */
export class Standing {
  private readonly states: State[] = [];

  constructor(
    private readonly children: Children,
    readonly skill: Skill,
    cuts: { readonly isCutByAge: boolean; readonly leftSince: readonly string[]; readonly isEver: boolean },
  ) {
    const evers = everStates(cuts.isCutByAge ? children.edges.length : 0);
    const bandOf = ({ bands }: Kind) => bands[skill.basis];
    const statusOf = (kind: Kind) => (kind.gone < 0 ? -1 : stretchOf(children, kind, cuts.leftSince));
    const likes = new Map<string, Kind[]>();
    for (const kind of children.kinds) {
      const name = JSON.stringify([kind.group, statusOf(kind), statusOf(kind) === 0 ? -1 : bandOf(kind)]);
      likes.set(name, [...(likes.get(name) ?? []), kind]);
    }
    for (const kinds of likes.values()) {
      const { group } = kinds[0]!;
      const gone = statusOf(kinds[0]!);
      const status = gone < 0 ? "followed" : gone > 0 ? "left" : "gone";
      const band = gone === 0 ? -1 : bandOf(kinds[0]!);
      const most = cuts.isCutByAge ? band : 0;
      const pairs = statesOf(status, most, cuts.isEver ? evers : everStates(0), cuts.isEver);
      const columns = children.unknowns.columns(pairs.length);
      pairs.forEach(([box, ever], at) => {
        this.states.push({ group, status, gone, band, box, ever, column: columns[at] as number });
      });
      children.unknowns.same(sumOf(kinds.map(({ column }) => column)), sumOf(columns));
    }
  }

  sum(is: (state: State) => boolean): Sum {
    return sumOf(this.states.filter(is).map(({ column }) => column));
  }

  isIn(band: number, months: readonly [number, number]): boolean {
    return this.children.isIn(band, months);
  }
}

/** 0: gone before every period of those who left; n: in the period that began n-th. */
function stretchOf(children: Children, kind: Kind, leftSince: readonly string[]): number {
  return leftSince.filter((day) => children.isGoneSince(kind, day)).length;
}

/** In order of age: looked for without it up to some edge, seen with it after some edge. */
function everStates(edgeCount: number): Ever[] {
  const counts = Array.from({ length: edgeCount + 1 }, (_, at) => at);
  return [
    { is: "never", without: 0, met: 0 },
    ...counts.map((without): Ever => ({ is: "not met", without, met: 0 })),
    ...counts.map((met): Ever => ({ is: "had", without: 0, met })),
    ...counts.flatMap((met) =>
      counts.filter((without) => without <= met).map((without): Ever => ({ is: "interval", without, met })),
    ),
  ];
}

/** @param most - edges at or below the age on the day: no look of that day or before is of a greater age */
function statesOf(
  status: State["status"],
  most: number,
  evers: readonly Ever[],
  isEver: boolean,
): [Box | null, Ever][] {
  if (status === "gone") return evers.map((ever) => [null, ever]);
  const sofar = evers.filter(({ without, met }) => without <= most && met <= most);
  const boxes = sofar.flatMap((ever) => boxesOf(ever).map((box): [Box, Ever] => [box, ever]));
  if (status === "followed" || !isEver) return boxes;
  // looks after leaving are used up to the as-of date: who had not met it on the last day may have met it since
  const later = evers.filter(({ is }) => is === "interval" || is === "not met");
  return [
    ...boxes.filter(([, { is }]) => is === "had" || is === "interval"),
    ...evers.map((ever): [Box, Ever] => ["notAssessed", ever]),
    ...later.flatMap((ever): [Box, Ever][] => [
      ["notMet", ever],
      ["outOfDate", ever],
    ]),
  ];
}

function boxesOf({ is }: Ever): readonly Box[] {
  if (is === "never") return ["notAssessed"];
  if (is === "not met") return ["notMet", "outOfDate"];
  return [is === "had" ? "hadAtFirstLook" : "gained", "lost"];
}
