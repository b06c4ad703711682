import "../support/seed";
import fc from "fast-check";
import { FUNCTIONS } from "../../functions/registry";
import { setSolver } from "../../functions/solver";
import { inJson } from "../../functions/date-system";
import { delinquentChildren } from "../published/delinquent-children-wp22";
import { geurts1992 } from "../published/geurts-1992";
import { loadSolver } from "../release/load";
import { gridOf } from "../release/systems";

const call = (name: string, ...args: unknown[]) => inJson(() => FUNCTIONS.get(name)!.fn(...args));

describe("PROTECT", () => {
  test("says what to do while the solver is not there", () => {
    expect(() => call("PROTECT", [[3, 20]], null)).toThrow(
      "The solver did not load: reload the page, then recalculate.",
    );
  });

  describe("with the solver", () => {
    beforeAll(async () => setSolver(await loadSolver()));

    test("hides a small count and the three that complete its ring, by hand", () => {
      // 3 needs a partner in its row and one in its column, and those a fourth: the cheapest ring is 20 + 20 + 20
      const counts = [
        [3, 20, 30],
        [20, 25, 30],
        [20, 20, 30],
      ];
      expect(call("PROTECT", counts, null)).toEqual([
        ["*", "*", 30, 53],
        [20, 25, 30, 75],
        ["*", "*", 30, 70],
        [43, 65, 90, 198],
      ]);
    });

    test("leaves 0 and 11 as they are, hides 1 and 10 (CMS cell size suppression policy)", () => {
      const shown = call("PROTECT", [[0, 1, 10, 11]], null)[0]!;
      expect(shown.slice(0, 4)).toEqual([0, "*", "*", 11]);
    });

    test("hides a total only where it is small or nothing inside serves", () => {
      const shown = call(
        "PROTECT",
        [
          [3, 20],
          [20, 20],
        ],
        null,
      );
      expect(shown.map((row) => row.at(-1))).toEqual([23, 40, 63]);
      expect(call("PROTECT", [[3, 4]], null)).toEqual([
        ["*", "*", "*"],
        ["*", "*", "*"],
      ]);
    });

    test("what it hides cannot be proved small by PROVABLE", () => {
      fc.assert(
        fc.property(gridOf(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 6 }), 40), (counts) => {
          const shown = call("PROTECT", counts, null);
          const hidden = shown.map((row) => row.map((cell) => cell === "*"));
          if (!hidden.flat().includes(true)) return;
          for (const [row, column, lowest, highest] of call("PROVABLE", counts, hidden)) {
            const truth = totalsOf(counts)[Number(row) - 1]![Number(column) - 1]!;
            expect(lowest).toBeLessThanOrEqual(truth);
            if (highest !== null) expect(highest).toBeGreaterThanOrEqual(truth);
            if (truth >= 1 && truth <= 10) expect(lowest === 0 || highest === null || highest >= 11).toBe(true);
          }
        }),
        { numRuns: 25 },
      );
    });

    test.each([
      [[[3, "x"]], null, "Row 1: counts is not a number"],
      [[[3, -1]], null, "it cannot be below 0"],
      [[[3, 1.5]], null, "give a whole number"],
      [[[3, null]], null, "counts is empty"],
      [[[3, 4]], 1, "minimum goes from 2 to 1000"],
    ])("%j, %j: %s", (counts, minimum, message) => {
      expect(() => call("PROTECT", counts, minimum)).toThrow(message);
    });
  });
});

describe("PROVABLE", () => {
  beforeAll(async () => setSolver(await loadSolver()));

  test("Geurts (1992)", () => {
    const counts = [
      [4, 3],
      [2, 1],
      [3, 3],
    ];
    const hidden = [
      [true, true],
      [true, true],
      [false, null],
    ];
    const found = call("PROVABLE", counts, hidden);
    expect(found.map((row) => row[2])).toEqual(geurts1992.lower);
    expect(found.map((row) => row[3])).toEqual(geurts1992.upper);
  });

  test.each(delinquentChildren.patterns)("WP 22, $name, TRUE as text too", ({ hidden, lower, upper }) => {
    const mask = delinquentChildren.table.map((row, r) =>
      row.map((_, c) => ((hidden as readonly number[]).includes(r * 4 + c + 1) ? "TRUE" : "FALSE")),
    );
    const found = call("PROVABLE", delinquentChildren.table, mask);
    expect(found.map((row) => row[2])).toEqual(lower);
    expect(found.map((row) => row[3])).toEqual(upper);
  });

  test("a hidden total leaves no end above", () => {
    const found = call(
      "PROVABLE",
      [[5]],
      [
        [true, true],
        [true, true],
      ],
    );
    expect(found).toEqual([
      [1, 1, 0, null],
      [1, 2, 0, null],
      [2, 1, 0, null],
      [2, 2, 0, null],
    ]);
  });

  test.each([
    [[[5, 6]], [[true]], "hidden has 1 rows and 1 columns: give it 1 by 2 as counts, or 2 by 3 with the totals."],
    [[[5, 6]], [["maybe", true]], "hidden must be TRUE or FALSE in every cell."],
    [[[5, 6]], [[false, false]], "hidden has no TRUE"],
  ])("%j, %j: %s", (counts, hidden, message) => {
    expect(() => call("PROVABLE", counts, hidden)).toThrow(message);
  });
});

function totalsOf(counts: readonly (readonly number[])[]): number[][] {
  const rows = counts.map((row) => [...row, row.reduce((sum, each) => sum + each, 0)]);
  return [...rows, rows[0]!.map((_, column) => rows.reduce((sum, row) => sum + row[column]!, 0))];
}
