import { partsOfKey } from "../../../src/release/draft/keys";
import { checkSystem } from "../../../src/release/draft/check-system";
import type { Cell, CountSystem } from "../../../src/release/system";
import { sampleDraft } from "./support";

/** Wholes that hold a part by some equation of which all other terms are added to the part. */
function isWithin(
  { cells, equations }: CountSystem,
  is: (cell: Cell) => boolean,
  whole: (cell: Cell) => boolean,
): boolean {
  return equations.some(({ terms, equals }) => {
    const sign = (test: (cell: Cell) => boolean) => terms.find(({ cell }) => test(cells[cell]!))?.coefficient ?? 0;
    const lone = terms.filter(({ coefficient }) => Math.sign(coefficient) === Math.sign(sign(whole)));
    return equals === 0 && sign(is) * sign(whole) < 0 && lone.length === 1;
  });
}

/**
 * By the definitions of METHOD.md alone: a child who left was ever followed, so of those who ever met a skill at least as
 * many are there as had met it when they left; and children followed in a quarter are some of those of the period.
 */
describe("what one table is a part of in another", () => {
  const ever = sampleDraft(["met-by-band-left", "age-when-met"], { from: "2025-10-01" }, 60);
  const year = sampleDraft(["referrals"], { from: "2025-10-01" }, 60);

  test.each([
    ["met", "met"],
    ["lost", "met"],
    ["notAssessed", "neverLookedAt"],
  ])("children who left, %s: among those ever followed, %s", (column, whole) => {
    const skills = ever.estimates.context.cohort.skills.map(({ id }) => `skill ${id} (`);
    const held = skills.filter((skill) => ever.system.cells.some(({ key }) => isLeft(key, skill, column)));
    expect(held.length).toBeGreaterThan(5);
    for (const skill of held) {
      const isEver = ({ key }: Cell) => {
        const { population, subject, column: own, ages } = partsOfKey(key);
        return population === "ever followed" && subject.startsWith(skill) && own === whole && ages === "..";
      };
      expect([skill, isWithin(ever.system, ({ key }) => isLeft(key, skill, column), isEver)]).toEqual([skill, true]);
    }
  });

  test("children followed in a quarter, on a site or in a band: among those of the period", () => {
    const followed = year.system.cells.filter(({ key, showing }) => {
      const { population, column, subject } = partsOfKey(key);
      return population === "referred" && column === "children" && subject === "" && showing === "table";
    });
    const isAll = ({ key }: Cell) => {
      const { population, when, group, ages, column, subject } = partsOfKey(key);
      return (
        [population, when, group, ages, column, subject].join() === "referred,2025-10-01..2026-09-30,,..,children,"
      );
    };
    const parts = followed.filter((cell) => !isAll(cell));
    expect(parts.length).toBeGreaterThan(8);
    for (const part of parts) {
      const is = (cell: Cell) => cell.key === part.key;
      expect([part.place, isWithin(year.system, is, isAll)]).toEqual([part.place, true]);
    }
  });

  test("the true counts satisfy every equation", () => {
    expect(() => checkSystem(ever.system)).not.toThrow();
    expect(() => checkSystem(year.system)).not.toThrow();
  });
});

function isLeft(key: string, skill: string, column: string): boolean {
  const { population, subject, ages, column: own, group } = partsOfKey(key);
  return population === "left" && subject.startsWith(skill) && ages === ".." && own === column && group === "";
}
