import Fraction from "fraction.js";
import type { Disclosure } from "../attack";
import type { Certificate } from "../certificate";
import type { CountSystem } from "../system";

/**
 * Cells of which at least one more must be hidden, or the count stays provable.
 *
 * A certificate leaves a remainder of each cell that is shown. While every cell with a remainder that could loosen the
 * bound stays shown, the same multipliers prove the same bound, whatever else is hidden. So no pattern without one of
 * them is safe: the cut of a cutting-plane method for hiding (after Fischetti & Salazar, 2001, Manag Sci 47:1008).
 */
export function coverOf(
  system: CountSystem,
  isFree: (cell: number) => boolean,
  { lowest, highest }: Disclosure,
): number[] | null {
  if (lowest === null || highest === null) return null;
  return [...new Set([...loosening(system, lowest), ...loosening(system, highest)])].filter(isFree);
}

/** Cells that loosen the certificate's bound if they are hidden: from their count down to the least, or up without end. */
function loosening(system: CountSystem, { cell, side, multipliers }: Certificate): number[] {
  const isWhole = multipliers.every(({ times }) => /^-?\d{1,9}$/.test(times));
  const signs = isWhole ? wholeSigns(system, cell, multipliers) : fractionSigns(system, cell, multipliers);
  return signs.flatMap(([each, sign]) => {
    if (sign === 0) return [];
    const goesUp = sign > 0 === (side === "highest");
    const { count, atLeast = 0 } = system.cells[each]!;
    return goesUp || (count ?? Infinity) > atLeast ? [each] : [];
  });
}

/** The sign of what remains of each cell; most multipliers are whole, and plain numbers do. */
function wholeSigns(system: CountSystem, cell: number, multipliers: Certificate["multipliers"]): [number, number][] {
  const remains = new Map<number, number>([[cell, 1]]);
  for (const { equation, times } of multipliers) {
    for (const { cell: each, coefficient } of system.equations[equation]!.terms) {
      remains.set(each, (remains.get(each) ?? 0) - Number(times) * coefficient);
    }
  }
  return [...remains].map(([each, remainder]) => [each, Math.sign(remainder)]);
}

function fractionSigns(system: CountSystem, cell: number, multipliers: Certificate["multipliers"]): [number, number][] {
  const remains = new Map<number, Fraction>([[cell, new Fraction(1)]]);
  for (const { equation, times } of multipliers) {
    const by = new Fraction(times);
    for (const { cell: each, coefficient } of system.equations[equation]!.terms) {
      remains.set(each, (remains.get(each) ?? new Fraction(0)).sub(by.mul(coefficient)));
    }
  }
  return [...remains].map(([each, remainder]) => [each, remainder.compare(0)]);
}
