import Fraction from "fraction.js";
import type { Knowledge } from "./knowledge";
import type { Part } from "./parts";

/**
 * Proof that a cell can be no lower, or no higher: each equation of the part times its multiplier, added up.
 *
 * With multipliers y and what remains of each unknown, r = e - A'y, the cell equals b'y + r'x, and every term of r'x is
 * bounded by what is known of that unknown. Any multipliers give a valid bound, so a solver that errs can prove too
 * little and never too much. All arithmetic is in exact fractions.
 */
export interface Certificate {
  readonly cell: number;
  readonly side: "lowest" | "highest";
  /** The whole number that it proves. */
  readonly bound: number;
  /** Index of an equation of the system, and its multiplier as an exact fraction such as "-1/2". */
  readonly multipliers: readonly { readonly equation: number; readonly times: string }[];
}

/** A solver's multipliers are fractions with small denominators blurred by rounding: this near counts as the fraction. */
const BLUR = 1e-6;

/** The certificate that a solver's multipliers make, or null where they prove no bound. */
export function certify(
  part: Part,
  knowledge: Knowledge,
  target: Pick<Certificate, "cell" | "side">,
  duals: readonly number[],
): Certificate | null {
  const multipliers = part.equations.flatMap(({ equation }, row) => {
    const times = new Fraction(duals[row] ?? 0).simplify(BLUR);
    return times.equals(0) ? [] : [{ equation, times: times.toFraction() }];
  });
  const bound = boundBy(part, knowledge, target, multipliers);
  return bound === null ? null : { ...target, bound, multipliers };
}

/** True where the certificate, worked out again in exact fractions, proves the bound that it states. */
export function holds(part: Part, knowledge: Knowledge, certificate: Certificate): boolean {
  return boundBy(part, knowledge, certificate, certificate.multipliers) === certificate.bound;
}

function boundBy(
  part: Part,
  { lower, upper }: Knowledge,
  { cell, side }: Pick<Certificate, "cell" | "side">,
  multipliers: Certificate["multipliers"],
): number | null {
  const times = new Map(multipliers.map(({ equation, times }) => [equation, new Fraction(times)]));
  const remains = new Map<number, Fraction>([[cell, new Fraction(1)]]);
  let total = new Fraction(0);
  for (const equation of part.equations) {
    const by = times.get(equation.equation);
    if (by === undefined) continue;
    total = total.add(by.mul(equation.equals));
    equation.cells.forEach((each, at) =>
      remains.set(each, (remains.get(each) ?? new Fraction(0)).sub(by.mul(equation.coefficients[at] as number))),
    );
  }
  for (const [each, remainder] of remains) {
    if (remainder.equals(0)) continue;
    const end = remainder.compare(0) > 0 === (side === "lowest") ? lower[each] : upper[each];
    if (end === Infinity) return null;
    total = total.add(remainder.mul(end as number));
  }
  return Number(side === "lowest" ? total.ceil().valueOf() : total.floor().valueOf());
}
