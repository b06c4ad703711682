import { attack } from "../../src/release/attack";
import { gridSystem, type GridSystem } from "../../src/release/grid-system";
import { CannotProtect, hide } from "../../src/release/hide/hide";
import { knowledgeOf } from "../../src/release/knowledge";
import type { Solver } from "../../src/release/linear-model";
import { isSecret } from "../../src/release/system";
import { chanceOf } from "./audit/random-program";
import { naivePattern } from "./audit/naive";
import { loadSolver } from "./load";

const MINIMUM = 3;
const MOST = 4;

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Every table of counts from 0 to `MOST`, one of all that differ in the order of rows and columns only. */
function allCounts(rows: number, columns: number): number[][][] {
  const found = new Map<string, number[][]>();
  for (let code = 0; code < (MOST + 1) ** (rows * columns); code += 1) {
    const digits = code.toString(MOST + 1).padStart(rows * columns, "0");
    const counts = Array.from({ length: rows }, (_, r) =>
      [...digits.slice(r * columns, (r + 1) * columns)].map(Number),
    );
    const name = canonical(counts);
    if (!found.has(name)) found.set(name, counts);
  }
  return [...found.values()];
}

function canonical(counts: readonly (readonly number[])[]): string {
  const byRows = (order: readonly number[]) =>
    [...counts.map((row) => order.map((c) => row[c]).join(""))].sort().join(",");
  return permutations(counts[0]!.map((_, c) => c))
    .map(byRows)
    .sort()[0]!;
}

function permutations(of: readonly number[]): number[][] {
  if (of.length < 2) return [[...of]];
  return of.flatMap((first) => permutations(of.filter((each) => each !== first)).map((rest) => [first, ...rest]));
}

/** True where every small hidden cell can hold 0, or the minimum or more: by trying every table that agrees. */
function isSafeByTrying(
  counts: readonly (readonly number[])[],
  hidden: (row: number, column: number) => boolean,
): boolean {
  const [rows, columns] = [counts.length, counts[0]!.length];
  const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
  const rowTotals = counts.map(sum);
  const columnTotals = counts[0]!.map((_, c) => sum(counts.map((row) => row[c]!)));
  const total = sum(rowTotals);
  const isSmall = (count: number) => count >= 1 && count < MINIMUM;
  const aims = new Set<string>();
  const table = counts.map((row) => [...row]);
  const full = (of: readonly (readonly number[])[]) => {
    const withRows = of.map((row) => [...row, sum(row)]);
    return [...withRows, withRows[0]!.map((_, c) => sum(withRows.map((row) => row[c]!)))];
  };
  full(counts).forEach((row, r) => row.forEach((count, c) => isSmall(count) && aims.add(`${r},${c}`)));
  const judge = () => {
    if (columnTotals.some((each, c) => !hidden(rows, c) && sum(table.map((row) => row[c]!)) !== each)) return;
    if (!hidden(rows, columns) && sum(table.flat()) !== total) return;
    full(table).forEach((row, r) => row.forEach((count, c) => !isSmall(count) && aims.delete(`${r},${c}`)));
  };
  const fill = (at: number): void => {
    if (aims.size === 0) return;
    if (at === rows * columns) return judge();
    const [r, c] = [Math.floor(at / columns), at % columns];
    const before = sum(table[r]!.slice(0, c));
    const isRowShown = !hidden(r, columns);
    const isEnd = c === columns - 1;
    const above = sum(table.slice(0, r).map((row) => row[c]!));
    // where no total says otherwise, more than the minimum tells nothing that the minimum does not
    const most = Math.min(
      isRowShown ? rowTotals[r]! - before : Infinity,
      hidden(rows, c) ? Infinity : columnTotals[c]! - above,
      hidden(rows, columns) ? Infinity : total,
      total + MINIMUM,
    );
    for (let value = hidden(r, c) ? 0 : counts[r]![c]!; value <= (hidden(r, c) ? most : counts[r]![c]!); value += 1) {
      if (value > most || (isEnd && isRowShown && before + value !== rowTotals[r])) continue;
      table[r]![c] = value;
      fill(at + 1);
    }
    table[r]![c] = counts[r]![c]!;
  };
  fill(0);
  return aims.size === 0;
}

const FEWEST = 1000;
const lossOf = (count: number) => FEWEST + count;

function gridOf(counts: readonly (readonly number[])[], minimum = MINIMUM): GridSystem {
  return gridSystem(counts, { minimum, loss: lossOf, totals: "out" });
}

function hides(system: GridSystem, extra: ReadonlySet<number>) {
  return (row: number, column: number) => {
    const at = system.at(row, column);
    return extra.has(at) || isSecret(system.cells[at]!);
  };
}

/** Loss of the cheapest safe pattern; null: none is safe. */
function bestByTrying(counts: readonly (readonly number[])[], system: GridSystem): number | null {
  const choices = [...system.cells.keys()].filter(
    (at) => system.cells[at]!.showing === "table" && !isSecret(system.cells[at]!),
  );
  const loss = (cells: readonly number[]) => cells.reduce((sum, at) => sum + system.cells[at]!.loss, 0);
  const patterns = Array.from({ length: 2 ** choices.length }, (_, bits) =>
    choices.filter((__, at) => (bits >> at) & 1),
  );
  const inOrder = patterns.map((cells) => ({ cells, loss: loss(cells) })).sort((one, other) => one.loss - other.loss);
  return inOrder.find(({ cells }) => isSafeByTrying(counts, hides(system, new Set(cells))))?.loss ?? null;
}

describe("every table of counts from 0 to 4 with a minimum of 3", () => {
  test.each([
    [2, 2, 1],
    [2, 3, 4],
  ])("%i by %i: no pattern is cheaper than the one found, and it is safe (one table in %i)", (rows, columns, step) => {
    const tables = allCounts(rows, columns).filter((_, at) => at % step === 0);
    for (const counts of tables) {
      const system = gridOf(counts);
      const best = bestByTrying(counts, system);
      if (best === null) {
        expect(() => hide(system, { solver })).toThrow(CannotProtect);
        continue;
      }
      const { hidden, loss } = hide(system, { solver });
      const extra = new Set([...hidden.keys()].filter((at) => hidden[at] === 1));
      expect({ counts, loss, safe: isSafeByTrying(counts, hides(system, extra)) }).toEqual({
        counts,
        loss: best,
        safe: true,
      });
    }
    expect(tables.length).toBeGreaterThan(50);
  });

  test("2 by 3: with small cells hidden and one more, safe is what trying every table calls safe", () => {
    const chance = chanceOf(11);
    let [safe, unsafe] = [0, 0];
    for (const counts of allCounts(2, 3)) {
      const system = gridOf(counts);
      const extra = new Set([Math.floor(chance() * 3), 4 + Math.floor(chance() * 3)]);
      const hidden = Uint8Array.from(system.cells, (cell, at) => (isSecret(cell) || extra.has(at) ? 1 : 0));
      const cells = system.cells.map((cell, at) => (hidden[at] === 1 ? { ...cell, showing: "table" as const } : cell));
      const { disclosures } = attack({ ...system, cells }, knowledgeOf({ ...system, cells }, hidden), solver);
      const bySide = isSafeByTrying(counts, hides(system, extra));
      expect({ counts, safe: disclosures.length === 0 }).toEqual({ counts, safe: bySide });
      if (bySide) safe += 1;
      else unsafe += 1;
    }
    expect(Math.min(safe, unsafe)).toBeGreaterThan(50);
  });
});

test("random tables up to 12 by 10: never worse than one more in each row and column, where that is safe", () => {
  const chance = chanceOf(5);
  for (let number = 0; number < 20; number += 1) {
    const [rows, columns] = [2 + Math.floor(chance() * 11), 2 + Math.floor(chance() * 9)];
    const counts = Array.from({ length: rows }, () =>
      Array.from({ length: columns }, () => Math.floor(80 * chance() ** 2)),
    );
    const system = gridOf(counts, 11);
    const naive = naivePattern(counts, 11);
    if (naive === null || system.cells.some((cell, at) => isSecret(cell) && at % (columns + 1) === columns)) continue;
    const extra = new Set(naive.map(([r, c]) => system.at(r, c)));
    const hidden = Uint8Array.from(system.cells, (cell, at) => (isSecret(cell) || extra.has(at) ? 1 : 0));
    if (attack(system, knowledgeOf(system, hidden), solver).disclosures.length > 0) continue;
    const loss = [...extra]
      .filter((at) => !isSecret(system.cells[at]!))
      .reduce((sum, at) => sum + system.cells[at]!.loss, 0);
    expect(hide(system, { solver }).loss).toBeLessThanOrEqual(loss);
  }
});
