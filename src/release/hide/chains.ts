import type { Disclosure } from "../attack";
import type { Knowledge } from "../knowledge";
import { type CountSystem, isSecret, type Term } from "../system";

/**
 * Secret counts that follow by plain subtraction: an equation with one unknown gives it, and so on down the chain.
 *
 * No solver is asked, and each comes with the certificate that the chain makes. It finds most of what a first attempt at
 * hiding gives away; what needs more than chains, or a division, is left to the attack.
 */
export class Chains {
  private readonly equationsOf: readonly (readonly number[])[];

  constructor(private readonly system: CountSystem) {
    const equationsOf: number[][] = system.cells.map(() => []);
    system.equations.forEach(({ terms }, index) =>
      terms.forEach(({ cell }) => (equationsOf[cell] as number[]).push(index)),
    );
    this.equationsOf = equationsOf;
  }

  disclosures(knowledge: Knowledge, isWanted: (cell: number) => boolean): Disclosure[] {
    const { cells, equations } = this.system;
    const isOpen = Uint8Array.from(cells, (_, cell) => (knowledge.lower[cell] === knowledge.upper[cell] ? 0 : 1));
    const open = Int32Array.from(equations, ({ terms }) => terms.filter(({ cell }) => isOpen[cell] === 1).length);
    const givenBy = new Map<number, number>();
    const queue = [...open.keys()].filter((index) => open[index] === 1);
    const found: number[] = [];
    for (let index = queue.pop(); index !== undefined; index = queue.pop()) {
      if (open[index] !== 1) continue;
      const { cell, coefficient } = equations[index]!.terms.find((term) => isOpen[term.cell] === 1) as Term;
      if (Math.abs(coefficient) !== 1) continue;
      isOpen[cell] = 0;
      givenBy.set(cell, index);
      if (isSecret(cells[cell]!) && cells[cell]!.count !== null && isWanted(cell)) found.push(cell);
      for (const each of this.equationsOf[cell] as readonly number[]) {
        open[each]! -= 1;
        if (open[each] === 1) queue.push(each);
      }
    }
    return found.map((cell) => this.disclosed(cell, givenBy));
  }

  private disclosed(cell: number, givenBy: ReadonlyMap<number, number>): Disclosure {
    const multipliers = [...this.unwind(cell, givenBy)].map(([equation, by]) => ({ equation, times: String(by) }));
    const bound = this.system.cells[cell]!.count as number;
    return {
      cell,
      lowest: { cell, side: "lowest", bound, multipliers },
      highest: { cell, side: "highest", bound, multipliers },
    };
  }

  /** The multiplier of each equation of the chain that ends in the cell, last link first: whole, since nothing is divided. */
  private unwind(cell: number, givenBy: ReadonlyMap<number, number>): Map<number, number> {
    const multipliers = new Map<number, number>();
    const owed = new Map<number, number>([[cell, 1]]);
    const order = [...givenBy.keys()];
    for (let at = order.indexOf(cell); at >= 0 && owed.size > 0; at -= 1) {
      const each = order[at] as number;
      const share = owed.get(each);
      if (share === undefined) continue;
      owed.delete(each);
      const index = givenBy.get(each) as number;
      const { terms } = this.system.equations[index]!;
      const own = terms.find((term) => term.cell === each) as Term;
      const by = share * own.coefficient;
      multipliers.set(index, by);
      for (const term of terms) {
        if (term.cell === each || !givenBy.has(term.cell)) continue;
        const left = (owed.get(term.cell) ?? 0) - by * term.coefficient;
        if (left === 0) owed.delete(term.cell);
        else owed.set(term.cell, left);
      }
    }
    return multipliers;
  }
}
