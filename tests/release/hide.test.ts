import "../support/seed";
import fc from "fast-check";
import { attack } from "../../src/release/attack";
import { gridSystem, type GridSystem } from "../../src/release/grid-system";
import { CannotProtect, hide } from "../../src/release/hide/hide";
import { knowledgeOf } from "../../src/release/knowledge";
import type { Solver } from "../../src/release/linear-model";
import { isSecret } from "../../src/release/system";
import { delinquentChildren } from "../published/delinquent-children-wp22";
import { RANDOM_TABLES } from "../published/sdc-random-tables";
import { loadSolver } from "./load";
import { allTables, gridOf } from "./systems";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Fewest cells first, then the smallest sum. */
const FEWEST = 10_000;
const grid = (table: readonly (readonly number[])[], minimum: number) =>
  gridSystem(table, { minimum, loss: (count) => FEWEST + count, totals: "out" });

describe("hiding", () => {
  test("a table of 12 by 10 and smaller: nothing small shows, nothing small can be proved", () => {
    fc.assert(
      fc.property(gridOf(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 2, max: 10 }), 60), (counts) => {
        const system = withTotalsIfNeeded(counts, 11);
        const pattern = hide(system, { solver });
        system.cells.forEach((cell, at) => expect(isSecret(cell) && pattern.hidden[at] === 0).toBe(false));
        expect(attack(system, knowledgeOf(system, pattern.hidden), solver).disclosures).toEqual([]);
        expect(pattern.bound).toBe(pattern.loss);
      }),
      { numRuns: 40 },
    );
  });

  test("loses as little as the best of all patterns, found by trying each", () => {
    const sizes = fc.integer({ min: 2, max: 3 });
    fc.assert(
      fc.property(gridOf(sizes, sizes, 9), (counts) => {
        const system = grid(counts, 4);
        const best = bestByTrying(system);
        if (best === null) expect(() => hide(system, { solver })).toThrow(CannotProtect);
        else expect(hide(system, { solver }).loss).toBe(best);
      }),
      { numRuns: 60 },
    );
  });

  test.each(RANDOM_TABLES.map((each, at) => ({ ...each, at })))(
    "random table $at: nothing small can be proved, and no more is lost than by its mask, where that is safe",
    (published) => {
      const system = withTotalsIfNeeded(published.table, 11);
      const { loss, hidden } = hide(system, { solver });
      expect(attack(system, knowledgeOf(system, hidden), solver).disclosures).toEqual([]);
      expect(lossOf(system, hidden)).toBe(loss);
      const byMask = published.mask.flatMap((row, r) =>
        row.flatMap((is, c) =>
          is === 1 && !isSecret(system.cells[system.at(r, c)]!) ? [system.cells[system.at(r, c)]!.loss] : [],
        ),
      );
      const isMaskSafe = published.lower.every((lower, at) => lower === 0 || published.upper[at]! > 10);
      const provedByMask = attack(system, knowledgeOf(system, maskIn(system, published.mask)), solver).disclosures;
      // R's bounds and the attack judge each mask alike; one that is not safe may lose less than what is.
      expect(provedByMask.length === 0).toBe(isMaskSafe);
      const lossOfMask = byMask.reduce((sum, each) => sum + each, 0);
      expect(isMaskSafe && loss > lossOfMask).toBe(false);
    },
  );

  test("WP 22: no small count can be proved, with fewer cells than one more in each row", () => {
    const system = grid(delinquentChildren.table, delinquentChildren.threshold);
    const { hidden, loss, bound } = hide(system, { solver });
    expect(attack(system, knowledgeOf(system, hidden), solver).disclosures).toEqual([]);
    expect(loss).toBe(bound);
    // the pattern printed there hides three cells beside the six small ones
    expect(Math.floor(loss / FEWEST)).toBeLessThanOrEqual(3);
  });

  test("what is out already and gives a count away cannot be protected", () => {
    const system = grid([[3, 20]], 11);
    const cells = system.cells.map((cell, at) => (at === 1 || at === 2 ? { ...cell, showing: "out" as const } : cell));
    expect(() => hide({ ...system, cells }, { solver })).toThrow(CannotProtect);
  });

  test("stopped before it began, it hides more than it must and says so", () => {
    const system = grid(
      [
        [3, 20, 30],
        [20, 20, 30],
        [20, 20, 30],
      ],
      11,
    );
    const pattern = hide(system, { solver, isTimeUp: () => true });
    expect(pattern.stoppedEarly).toBe(true);
    expect(pattern.loss).toBeGreaterThan(hide(system, { solver }).loss);
    expect(pattern.attack.disclosures).toEqual([]);
  });
});

/** What the hidden cells that need not be hidden for their own sake would have told. */
function lossOf(system: GridSystem, hidden: Uint8Array): number {
  return system.cells.reduce((sum, cell, at) => sum + (hidden[at] === 1 && !isSecret(cell) ? cell.loss : 0), 0);
}

function maskIn(system: GridSystem, mask: readonly (readonly number[])[]): Uint8Array {
  const hidden = new Uint8Array(system.cells.length);
  mask.forEach((row, r) => row.forEach((is, c) => (hidden[system.at(r, c)] = is)));
  return hidden;
}

function withTotalsIfNeeded(counts: readonly (readonly number[])[], minimum: number): GridSystem {
  const system = grid(counts, minimum);
  try {
    hide(system, { solver });
    return system;
  } catch (error) {
    if (!(error instanceof CannotProtect)) throw error;
    return gridSystem(counts, { minimum, loss: (count) => FEWEST + count, totals: "table" });
  }
}

/** The smallest loss of a safe pattern; null: none is. Safe is judged by trying every table too. */
function bestByTrying(system: GridSystem): number | null {
  const choices = system.cells.flatMap((cell, at) => (cell.showing === "table" && !isSecret(cell) ? [at] : []));
  const patterns = Array.from({ length: 2 ** choices.length }, (_, bits) =>
    choices.filter((_, at) => (bits >> at) & 1),
  );
  const lossOf = (cells: readonly number[]) => cells.reduce((sum, cell) => sum + system.cells[cell]!.loss, 0);
  const safe = patterns
    .sort((one, other) => lossOf(one) - lossOf(other))
    .find((cells) => isSafeByTrying(system, cells));
  return safe === undefined ? null : lossOf(safe);
}

function isSafeByTrying(system: GridSystem, extra: readonly number[]): boolean {
  const hidden = Uint8Array.from(system.cells, (cell, at) =>
    (cell.showing === "table" && isSecret(cell)) || extra.includes(at) ? 1 : 0,
  );
  const tables = allTables(system, hidden, 27);
  return [...system.cells.keys()]
    .filter((cell) => hidden[cell] === 1 && isSecret(system.cells[cell]!))
    .every((cell) => tables.some((table) => table[cell]! < 1 || table[cell]! > system.cells[cell]!.secret!.high));
}
