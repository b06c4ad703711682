import loadHighs, { type Highs } from "highs";
import type { Solver } from "../../src/release/linear-model";
import { audit, type Release } from "./audit/audit";
import { type Case, caseOf, release } from "./audit/cases";
import { changed, randomProgram } from "./audit/random-program";
import { loadSolver } from "./load";

let solver: Solver;
let highs: Highs;
beforeAll(async () => {
  solver = await loadSolver();
  highs = await loadHighs();
});

const SMALL = { mostSkills: 2, mostChildren: 110 };
/** Ends most searches before their best pattern: one that was stopped must be as safe. */
const HOW = { mostAsks: 40 };
/** Seeds of small first releases of each kind. */
const FEW = [0, 2, 3, 5, 10, 11];
const seeds = (count: number) => Array.from({ length: count }, (_, seed) => seed);

/** The first release of the case of a seed, and none after it. */
function alone(seed: number): Case {
  const own = caseOf(seed);
  return { ...own, asks: own.asks.slice(0, 1) };
}

describe("an outsider who knows the definitions and every release, with a system and a solver call of their own", () => {
  test.each(seeds(30).map((seed) => [seed, caseOf(seed).name] as const))(
    "program %i, %s: no small count is proved",
    (seed) => {
      const program = randomProgram(seed, SMALL);
      const { releases } = release(program, caseOf(seed), solver, HOW);
      expect(releases.length).toBeGreaterThan(0);
      const { small, leaks } = audit(program, releases, { minimum: caseOf(seed).minimum, highs });
      expect(leaks).toEqual([]);
      expect(small).toBeGreaterThan(0);
    },
  );

  test("proves small counts where a release shows all, so that the audit itself is known to see", () => {
    const program = randomProgram(3, SMALL);
    const shown = caseOf(0);
    // with a minimum of 1 nothing is small
    const { releases } = release(program, { ...shown, minimum: 1 }, solver, { settings: { minimumCell: 1, floor: 1 } });
    const { small, leaks } = audit(program, releases, { minimum: 11, highs });
    expect(small).toBeGreaterThan(10);
    expect(leaks).toHaveLength(small);
  });

  test.each(FEW)("twins, program %i: a count of children of few families is not proved either", (seed) => {
    const program = randomProgram(seed, { ...SMALL, mostChildren: 60, twins: true });
    const { releases } = release(program, alone(seed), solver, HOW);
    const how = { minimum: caseOf(seed).minimum, highs, contributorsOf: (count: number) => count / 2 };
    const { leaks } = audit(program, releases, how);
    expect(leaks).toEqual([]);
  });

  test.each(FEW)("none and all of a group hidden too, program %i", (seed) => {
    const program = randomProgram(seed, SMALL);
    const { asks, ...own } = caseOf(seed);
    const bands = { ...own, asks: [{ ...asks[0]!, tables: ["met-by-band"] as const }] };
    const { releases } = release(program, bands, solver, { ...HOW, settings: { wholeGroups: "hide" } });
    const { leaks } = audit(program, releases, { minimum: own.minimum, highs, wholeGroups: true });
    expect(leaks).toEqual([]);
  });

  test.each(FEW)("ranges, program %i", (seed) => {
    const program = randomProgram(seed, SMALL);
    const { releases } = release(program, alone(seed), solver, { method: "ranges" });
    const { leaks } = audit(program, releases, { minimum: caseOf(seed).minimum, highs });
    expect(leaks).toEqual([]);
  });

  test.each(FEW)("rounded, program %i: additive, near the truth, and no small count is proved", (seed) => {
    const program = randomProgram(seed, SMALL);
    const { releases, base } = release(program, alone(seed), solver, { method: "round" });
    const { leaks } = audit(program, releases, { minimum: caseOf(seed).minimum, highs, base });
    expect(leaks).toEqual([]);
  });
});

describe("records that changed between two releases", () => {
  test.each(FEW)("program %i: each is safe by itself, and the change is named as not covered", (seed) => {
    const program = randomProgram(seed, SMALL);
    const later = changed(program, seed);
    const own = alone(seed);
    const first = release(program, own, solver, HOW);
    const second = release(later, own, solver, { ...HOW, before: first.ledger });
    const again = release(program, own, solver, { ...HOW, before: first.ledger });
    const how = { minimum: own.minimum, highs };
    expect(audit(later, second.releases, how).leaks).toEqual([]);
    expect(audit(program, [...first.releases, ...again.releases], how).leaks).toEqual([]);
    const isSeen = anyDiffers(first.releases[0]!, second.releases[0]!);
    expect(second.notCovered.some((sentence) => sentence.startsWith("Records changed"))).toBe(isSeen);
    expect(again.notCovered.filter((sentence) => !sentence.startsWith("Tables of children now "))).toEqual([]);
  });
});

/** True where both print a count under the same labels, and not the same one. */
function anyDiffers(one: Release, other: Release): boolean {
  const counts = ({ printed }: Release) =>
    new Map(
      printed.flatMap(({ id, columns, rows }) =>
        rows.flatMap((row) => {
          const labels = row.filter((value) => typeof value === "string" && value !== "*").join("|");
          return columns.flatMap(({ key, unit }, at): [string, unknown][] =>
            unit === "children" ? [[`${id}|${labels}|${key}`, row[at]]] : [],
          );
        }),
      ),
    );
  const others = counts(other);
  return [...counts(one)].some(([name, value]) => {
    const now = others.get(name);
    return typeof value === "number" && typeof now === "number" && now !== value;
  });
}
