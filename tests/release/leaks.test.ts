import loadHighs, { type Highs } from "highs";
import type { Solver } from "../../src/release/linear-model";
import { audit } from "./audit/audit";
import { caseOf, release } from "./audit/cases";
import { randomProgram } from "./audit/random-program";
import { loadSolver } from "./load";

let solver: Solver;
let highs: Highs;
beforeAll(async () => {
  solver = await loadSolver();
  highs = await loadHighs();
});

describe("an outsider who knows the definitions and every release, with a system and a solver call of their own", () => {
  test.each(Array.from({ length: 30 }, (_, seed) => [seed, caseOf(seed).name] as const))(
    "program %i, %s: no small count is proved",
    (seed) => {
      const program = randomProgram(seed);
      const { releases } = release(program, caseOf(seed), solver);
      const { leaks } = audit(program, releases, caseOf(seed).minimum, highs);
      expect(leaks).toEqual([]);
    },
  );
});
