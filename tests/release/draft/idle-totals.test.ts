import fc from "fast-check";
import { withoutIdleTotals } from "../../../src/release/draft/idle-totals";
import type { Cell, CountSystem } from "../../../src/release/system";
import { cohortArbitrary } from "../../oracle/random-cohort";
import { programDraft } from "./support";

const small = { low: 1, high: 4 };

function cell(key: string, showing: Cell["showing"], secret: Cell["secret"] = null): Cell {
  return { key, place: key, count: 0, showing, secret, loss: 1 };
}

function sum(whole: number, ...parts: number[]) {
  return {
    terms: [{ cell: whole, coefficient: 1 }, ...parts.map((at) => ({ cell: at, coefficient: -1 }))],
    equals: 0,
  };
}

test("a total that nobody prints and that is not small goes, and then the total of such totals' parts", () => {
  const cells = [cell("a", "table"), cell("b", "table"), cell("ab", "never"), cell("c", "table"), cell("abc", "never")];
  const system: CountSystem = { cells, equations: [sum(2, 0, 1), sum(4, 2, 3)] };
  expect(withoutIdleTotals(system)).toEqual({ cells, equations: [] });
});

test("a small one stays, a printed one stays, and so does a difference, which says that one count is not above another", () => {
  const system: CountSystem = {
    cells: [
      cell("a", "table"),
      cell("b", "table"),
      cell("small", "never", small),
      cell("printed", "table"),
      cell("left over", "never"),
      cell("total", "table"),
    ],
    equations: [sum(2, 0, 1), sum(3, 0, 1), sum(5, 4, 0)],
  };
  expect(withoutIdleTotals(system)).toEqual(system);
});

test("what was left out follows from what stays: every choice of the other counts gives one count of at least 0", () => {
  fc.assert(
    fc.property(cohortArbitrary(), (input) => {
      const { system } = programDraft(input, ["met-by-band", "reached-by-age"]);
      const lean = withoutIdleTotals(system);
      const kept = new Set(lean.equations);
      const gone = system.equations.filter((equation) => !kept.has(equation));
      const still = new Set(lean.equations.flatMap(({ terms }) => terms.map(({ cell: at }) => at)));
      for (const { terms } of gone) {
        const whole = terms.filter(({ cell: at, coefficient }) => coefficient === 1 && !still.has(at));
        expect(whole).toHaveLength(1);
        expect(system.cells[whole[0]!.cell]).toMatchObject({ showing: "never", secret: null });
      }
    }),
    { numRuns: 20 },
  );
});
