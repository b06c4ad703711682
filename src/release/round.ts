import { knowledgeOf, type Knowledge } from "./knowledge";
import type { Solver } from "./linear-model";
import { type Part, partsOf } from "./parts";
import type { CountSystem } from "./system";

/** Counts rounded to a base so that parts still add up to their totals. */
export interface Rounding {
  /** What prints of each cell of the release, a multiple of the base; NaN for cells that do not print. */
  readonly printed: Float64Array;
  /** No count prints further than this from the truth. */
  readonly within: number;
}

/** No whole multiples near the counts add up. */
export class CannotRound extends Error {
  constructor() {
    super("These counts cannot be rounded so that parts add up to their totals. Choose hiding, or another base.");
  }
}

/** How many multiples beyond the two nearest may be taken where those do not add up. */
const WIDEST = 2;

/**
 * Rounds every count to one of the two nearest multiples of `base`, as near to the truth as totals that add up allow:
 * controlled rounding (Cox & Ernst, 1982, INFOR 20:423).
 *
 * Equations with a figure that is out already are left to the attack: that figure was not rounded to this base.
 *
 * @param isTimeUp - true ends the search between the parts
 * @throws {CannotRound} when no multiples near the counts add up, or none were found in time
 */
export function roundCounts(
  system: CountSystem,
  base: number,
  solver: Solver,
  isTimeUp: () => boolean = () => false,
): Rounding {
  if (!Number.isInteger(base) || base < 2) throw new RangeError("roundCounts: the base is a whole number from 2 up");
  for (let extra = 0; extra <= WIDEST; extra += 1) {
    const printed = multiples(system, base, extra, { solver, isTimeUp });
    if (printed !== null) return { printed, within: base * (extra + 1) - 1 };
  }
  throw new CannotRound();
}

function multiples(
  system: CountSystem,
  base: number,
  extra: number,
  { solver, isTimeUp }: { readonly solver: Solver; readonly isTimeUp: () => boolean },
): Float64Array | null {
  const printed = new Float64Array(system.cells.length).fill(NaN);
  const own = { cells: system.cells, equations: system.equations.filter(({ terms }) => !terms.some(isOut)) };
  const all = knowledgeOf(system, new Uint8Array(system.cells.length).fill(1));
  function isOut({ cell }: { readonly cell: number }): boolean {
    return system.cells[cell]!.showing === "out";
  }
  for (const part of partsOf(own, all)) {
    if (isTimeUp()) throw new CannotRound();
    const found = roundPart(own, part, base, extra, solver);
    if (found === null) return null;
    part.cells.forEach((cell, at) => {
      if (system.cells[cell]!.showing === "table") printed[cell] = base * (found[at] as number);
    });
  }
  return printed;
}

/** The multiples of one part: unknowns are how many times the base, and beside each how far from the truth that is. */
function roundPart(system: CountSystem, part: Part, base: number, extra: number, solver: Solver): number[] | null {
  const size = part.cells.length;
  const columnOf = new Map(part.cells.map((cell, at) => [cell, at]));
  const near = part.cells.map((cell) => nearOf(system, cell, base, extra));
  const { values } = solver(
    {
      sense: "minimise",
      objective: Float64Array.from([...near.map(() => 0), ...near.map(({ weight }) => weight)]),
      lower: Float64Array.from([...near.map(({ from }) => from), ...near.map(() => 0)]),
      upper: Float64Array.from([...near.map(({ to }) => to), ...near.map(() => Infinity)]),
      whole: Uint8Array.from([...near.map(() => 1), ...near.map(() => 0)]),
      rows: [
        ...part.equations.map(({ cells, coefficients, equals }) => ({
          columns: cells.map((cell) => columnOf.get(cell) as number),
          coefficients,
          lower: equals / base,
          upper: equals / base,
        })),
        ...near.flatMap(({ truth, weight }, at) =>
          weight === 0
            ? []
            : [
                { columns: [at, size + at], coefficients: [-base, 1], lower: -truth, upper: Infinity },
                { columns: [at, size + at], coefficients: [base, 1], lower: truth, upper: Infinity },
              ],
        ),
      ],
    },
    { nodes: 2000 },
  );
  return values.length === 0 ? null : part.cells.map((_, at) => Math.round(values[at] as number));
}

function nearOf({ cells }: CountSystem, cell: number, base: number, extra: number) {
  const { count, showing, loss } = cells[cell]!;
  if (showing !== "table" || count === null) return { from: 0, to: Infinity, weight: 0, truth: 0 };
  const [floor, ceil] = [Math.floor(count / base), Math.ceil(count / base)];
  return { from: Math.max(0, floor - extra), to: ceil + extra, weight: loss, truth: count };
}

/** What an outsider knows who is told the base and `within`. */
export function knownRounded(system: CountSystem, printed: Rounding["printed"], within: number): Knowledge {
  const { lower, upper } = knowledgeOf(system, new Uint8Array(system.cells.length).fill(1));
  printed.forEach((count, cell) => {
    if (Number.isNaN(count)) return;
    lower[cell] = Math.max(lower[cell] as number, count - within);
    upper[cell] = count + within;
  });
  return { lower, upper };
}
