import "../support/seed";
import fc from "fast-check";
import { attack } from "../../src/release/attack";
import { holds } from "../../src/release/certificate";
import { gridSystem } from "../../src/release/grid-system";
import { knowledgeOf } from "../../src/release/knowledge";
import type { Solver } from "../../src/release/linear-model";
import { partsOf } from "../../src/release/parts";
import { provable } from "../../src/release/provable";
import { isSecret } from "../../src/release/system";
import { agrees, isOutside } from "../../src/release/witness";
import { delinquentChildren } from "../published/delinquent-children-wp22";
import { geurts1992 } from "../published/geurts-1992";
import { RANDOM_TABLES } from "../published/sdc-random-tables";
import { loadSolver } from "./load";
import { allTables, gridOf } from "./systems";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const grid = (table: readonly (readonly number[])[], minimum: number) =>
  gridSystem(table, { minimum, loss: () => 1, totals: "table" });

describe("bounds that an outsider can prove", () => {
  test.each(delinquentChildren.patterns)("WP 22, $name", ({ hidden, lower, upper }) => {
    const system = grid(delinquentChildren.table, delinquentChildren.threshold);
    const mask = new Uint8Array(system.cells.length);
    hidden.forEach((position) => (mask[system.at(Math.floor((position - 1) / 4), (position - 1) % 4)] = 1));
    const found = provable(system, knowledgeOf(system, mask), solver);
    expect(found.map(({ lowest }) => lowest)).toEqual(lower);
    expect(found.map(({ highest }) => highest)).toEqual(upper);
  });

  test("Geurts (1992), as in the Handbook on Statistical Disclosure Control", () => {
    const system = grid(
      [
        [4, 3],
        [2, 1],
      ],
      11,
    );
    const mask = new Uint8Array(system.cells.length);
    for (const row of [0, 1]) for (const column of [0, 1]) mask[system.at(row, column)] = 1;
    expect(system.cells[system.at(0, 2)]!.count).toBe(geurts1992.rowTotals[0]);
    expect(system.cells[system.at(2, 0)]!.count).toBe(geurts1992.columnTotals[0]);
    const found = provable(system, knowledgeOf(system, mask), solver);
    expect(found.map(({ lowest }) => lowest)).toEqual(geurts1992.lower);
    expect(found.map(({ highest }) => highest)).toEqual(geurts1992.upper);
  });

  test.each(RANDOM_TABLES.map((each, at) => ({ ...each, at })))("random table $at", (published) => {
    const system = grid(published.table, 11);
    const found = provable(system, knowledgeOf(system, maskOf(published)), solver);
    expect(found.map(({ cell }) => system.cells[cell]!.place)).toEqual(
      published.row.map((row, at) => `row ${row}, column ${published.col[at]}`),
    );
    expect(found.map(({ lowest }) => lowest)).toEqual(published.lower);
    expect(found.map(({ highest }) => highest)).toEqual(published.upper);
  });
});

describe("the attack", () => {
  test.each(RANDOM_TABLES.map((each, at) => ({ ...each, at })))(
    "random table $at: unsafe are those whose whole range is small",
    (published) => {
      const system = grid(published.table, 11);
      const { disclosures } = attack(system, knowledgeOf(system, maskOf(published)), solver);
      const unsafe = published.row.flatMap((row, at) =>
        published.lower[at]! >= 1 && published.upper[at]! <= 10 ? [`row ${row}, column ${published.col[at]}`] : [],
      );
      expect(disclosures.map(({ cell }) => system.cells[cell]!.place).sort()).toEqual(unsafe.sort());
    },
  );

  test("agrees with trying every table, and proves each of its answers", () => {
    const sizes = fc.integer({ min: 2, max: 3 });
    fc.assert(
      fc.property(gridOf(sizes, sizes, 6), fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }), (counts, more) => {
        const system = grid(counts, 4);
        const isInner = (cell: number) =>
          cell % (system.columns + 1) < system.columns && cell < system.at(system.rows, 0);
        const mask = Uint8Array.from(system.cells, (cell, at) => (isInner(at) && (isSecret(cell) || more[at]) ? 1 : 0));
        const knowledge = knowledgeOf(system, mask);
        const found = attack(system, knowledge, solver);
        const tables = allTables(system, mask, 18);
        const unsafe = [...system.cells.keys()].filter(
          (cell) =>
            mask[cell] === 1 &&
            isSecret(system.cells[cell]!) &&
            tables.every((table) => !isOutside(table[cell] as number, system.cells[cell]!.secret!)),
        );
        expect(found.disclosures.map(({ cell }) => cell).sort((a, b) => a - b)).toEqual(unsafe);
        const parts = partsOf(system, knowledge);
        const partOf = (cell: number) => parts.find(({ cells }) => cells.includes(cell))!;
        for (const witness of found.witnesses) expect(agrees(partOf(witness.cells[0]!), knowledge, witness)).toBe(true);
        for (const { cell, lowest, highest } of found.disclosures) {
          expect(lowest !== null && holds(partOf(cell), knowledge, lowest)).toBe(true);
          expect(highest !== null && holds(partOf(cell), knowledge, highest)).toBe(true);
          expect(lowest!.bound).toBe(Math.min(...tables.map((table) => table[cell] as number)));
          expect(highest!.bound).toBe(Math.max(...tables.map((table) => table[cell] as number)));
        }
      }),
    );
  });

  test("a certificate that claims more than its multipliers prove does not hold", () => {
    const system = grid(
      [
        [3, 20],
        [20, 20],
      ],
      11,
    );
    const mask = new Uint8Array(system.cells.length);
    mask[system.at(0, 0)] = 1;
    const knowledge = knowledgeOf(system, mask);
    const [part] = partsOf(system, knowledge);
    const [{ lowest, highest }] = attack(system, knowledge, solver).disclosures as [never] &
      { lowest: null; highest: null }[];
    expect(holds(part!, knowledge, lowest!)).toBe(true);
    expect(holds(part!, knowledge, { ...(lowest! as object), bound: 4 } as never)).toBe(false);
    expect(holds(part!, knowledge, { ...(highest! as object), bound: 2 } as never)).toBe(false);
  });

  test("counts that contradict one another are refused by their places", () => {
    const system = grid([[3, 4]], 11);
    const cells = system.cells.map((cell, at) => (at === 2 ? { ...cell, count: 8 } : cell));
    expect(() => attack({ ...system, cells }, knowledgeOf({ ...system, cells }, new Uint8Array(6)), solver)).toThrow(
      "These counts do not add up: row 1, column 1; row 1, column 2; row 1, column 3.",
    );
  });

  test("a cell of siblings is unsafe until it may hold more than they explain", () => {
    const system = grid([[12, 12]], 11);
    // 12 children of 10 families: small until 13 or more could stand there, or none
    const cells = system.cells.map((cell, at) => (at === 0 ? { ...cell, secret: { low: 1, high: 12 } } : cell));
    const secret = { ...system, cells };
    const shownTotal = Uint8Array.from(cells, (_, at) => (at === 0 || at === 1 ? 1 : 0));
    // both rows are the same here: the total row shows what the only row hides
    expect(attack(secret, knowledgeOf(secret, shownTotal), solver).disclosures.map(({ cell }) => cell)).toEqual([0]);
    const noTotalRow = Uint8Array.from(cells, (_, at) => (at === 2 || at === 5 ? 0 : 1));
    expect(attack(secret, knowledgeOf(secret, noTotalRow), solver).disclosures).toEqual([]);
  });
});

function maskOf({ table, mask }: (typeof RANDOM_TABLES)[number]): Uint8Array {
  const system = grid(table, 11);
  const hidden = new Uint8Array(system.cells.length);
  mask.forEach((row, r) => row.forEach((is, c) => (hidden[system.at(r, c)] = is)));
  return hidden;
}
