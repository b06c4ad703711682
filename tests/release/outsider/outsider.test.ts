import loadHighs, { type Highs } from "highs";
import type { Solver } from "../../../src/release/linear-model";
import { loadSolver } from "../load";
import { attack, holdsFor } from "./attack";
import { caseOf, outsiderOf, seedsOfTest } from "./cases";

let solver: Solver;
let highs: Highs;
beforeAll(async () => {
  solver = await loadSolver();
  highs = await loadHighs();
});

/**
 * Somebody who has the files that left and METHOD.md, and nothing of the program: people in every kind that the definitions
 * allow, and each printed number a sum of kinds. What holds for every number of people of each kind is proved.
 */
describe("an outsider with the files and the definitions", () => {
  test.each(seedsOfTest().map((seed) => [seed, caseOf(seed).name] as const))(
    "program %i, %s: no small count is proved",
    async (seed) => {
      const own = caseOf(seed);
      const { sheets, truths } = await outsiderOf(own, solver);
      const how = { skills: own.skills, minimum: own.minimum, highs };
      expect(holdsFor(truths, how)).toBe(true);
      const { small, proved } = attack(sheets, truths, how);
      expect(proved).toEqual([]);
      expect(small).toBeGreaterThan(10);
    },
  );

  test("proves every small count where nothing is held back, so that the attack itself is known to see", async () => {
    const own = caseOf(3);
    const { truths } = await outsiderOf(own, solver);
    const { small, proved } = attack(truths, truths, { skills: own.skills, minimum: own.minimum, highs });
    expect(small).toBeGreaterThan(20);
    expect(proved).toHaveLength(small);
  });
});
