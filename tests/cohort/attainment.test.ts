import * as fc from "fast-check";
import { attain } from "../../src/cohort/attainment";
import { type Attainment, STATE } from "../../src/cohort/state";
import { NO_DAY, RESULT } from "../../src/records/records";
import { cohortOf, type Row, type SmallProgram, smallPrograms, USUAL_RULE } from "./small-cohorts";

type Cell = Record<"metDay" | "withoutDay" | "lastLook" | "state" | "exact" | "disagreed", number>;

const NEVER: Cell = {
  metDay: NO_DAY,
  withoutDay: NO_DAY,
  lastLook: NO_DAY,
  state: STATE.notAssessed,
  exact: 0,
  disagreed: 0,
};

function cellOf(attainment: Attainment, cell: number): Cell {
  const { metDay, withoutDay, lastLook, state, exact, disagreed } = attainment;
  return {
    metDay: metDay[cell]!,
    withoutDay: withoutDay[cell]!,
    lastLook: lastLook[cell]!,
    state: state[cell]!,
    exact: exact[cell]!,
    disagreed: disagreed[cell]!,
  };
}

/** One cell from its rows, day by day, as METHOD.md (section 4) puts it. */
function slowly(rows: readonly Row[]): Cell {
  const days = [...new Set(rows.map((row) => row.day))].sort((a, b) => a - b);
  const looks = days.map((day) => {
    const those = rows.filter((row) => row.day === day);
    const results = new Set(those.map((row) => row.result));
    const result = results.size > 1 ? RESULT.notMet : those[0]!.result;
    return { day, result, disagreed: results.size > 1 ? 1 : 0, exact: Math.max(...those.map((row) => row.exact)) };
  });
  const last = looks[looks.length - 1];
  if (!last) return NEVER;
  const first = looks.findIndex((look) => look.result === RESULT.met || look.result === RESULT.lost);
  const met = looks[first];
  const without = first < 0 ? last : looks[first - 1];
  return {
    metDay: met?.day ?? NO_DAY,
    withoutDay: without?.day ?? NO_DAY,
    lastLook: last.day,
    state: stateOf(last.result, met !== undefined),
    exact: met?.result === RESULT.met ? met.exact : 0,
    disagreed: last.disagreed,
  };
}

function stateOf(lastResult: number, wasMet: boolean): number {
  if (lastResult === RESULT.met) return STATE.met;
  if (lastResult === RESULT.lost) return STATE.lost;
  if (wasMet) return STATE.lostToConfirm;
  return lastResult === RESULT.emerging ? STATE.emerging : STATE.notMet;
}

function expectAsSlowly(program: SmallProgram, upTo: number | Int32Array): void {
  const attainment = attain(cohortOf(program), upTo);
  program.children.forEach((_, child) => {
    const last = typeof upTo === "number" ? upTo : upTo[child]!;
    program.bases.forEach((_basis, skill) => {
      const rows = program.rows.filter((row) => row.child === child && row.skill === skill && row.day <= last);
      expect(cellOf(attainment, child * program.bases.length + skill)).toEqual(slowly(rows));
    });
  });
}

// Twelve days for sixty looks: most days have several, which agree or do not.
test("the same as day by day, where many looks share a day", () => {
  fc.assert(
    fc.property(smallPrograms(12), (program) => expectAsSlowly(program, 2_000_000)),
    { numRuns: 400 },
  );
});

test("up to a day, one for all and one a child", () => {
  fc.assert(
    fc.property(smallPrograms(40), fc.nat(60), (program, days) => {
      const first = program.children[0]!.birth;
      expectAsSlowly(program, first + days);
      expectAsSlowly(
        program,
        Int32Array.from(program.children, ({ birth }, child) => (child % 3 === 2 ? NO_DAY : birth + days)),
      );
    }),
  );
});

const { notMet, emerging, met, lost } = RESULT;

/** Looks as day and result, and the cell that the rules of section 4 give them. */
test.each<[string, [number, number][], Partial<Cell>]>([
  ["never looked at", [], NEVER],
  [
    "not met, then met",
    [
      [10, notMet],
      [20, met],
    ],
    { metDay: 20, withoutDay: 10, state: STATE.met },
  ],
  ["there at the first look", [[20, met]], { metDay: 20, withoutDay: NO_DAY, state: STATE.met }],
  [
    "never met",
    [
      [10, notMet],
      [20, emerging],
    ],
    { metDay: NO_DAY, withoutDay: 20, state: STATE.emerging },
  ],
  [
    "a loss does not erase it",
    [
      [10, emerging],
      [20, met],
      [30, lost],
    ],
    { metDay: 20, withoutDay: 10, state: STATE.lost },
  ],
  [
    "below met after met is lost, to confirm",
    [
      [20, met],
      [30, emerging],
    ],
    { metDay: 20, state: STATE.lostToConfirm },
  ],
  [
    "a later met restores it",
    [
      [20, met],
      [30, lost],
      [40, met],
    ],
    { metDay: 20, lastLook: 40, state: STATE.met },
  ],
  [
    "lost with no met before proves it was there",
    [
      [10, notMet],
      [20, lost],
    ],
    { metDay: 20, withoutDay: 10, state: STATE.lost },
  ],
  [
    "two results on one day count as not met",
    [
      [10, met],
      [10, emerging],
    ],
    { metDay: NO_DAY, withoutDay: 10, state: STATE.notMet, disagreed: 1 },
  ],
  [
    "in either order",
    [
      [10, emerging],
      [10, met],
    ],
    { metDay: NO_DAY, withoutDay: 10, state: STATE.notMet, disagreed: 1 },
  ],
  [
    "also after met",
    [
      [5, met],
      [10, met],
      [10, lost],
    ],
    { metDay: 5, state: STATE.lostToConfirm, disagreed: 1 },
  ],
  [
    "a third look of that day settles nothing",
    [
      [10, met],
      [10, notMet],
      [10, met],
    ],
    { metDay: NO_DAY, state: STATE.notMet, disagreed: 1 },
  ],
  [
    "a later day does",
    [
      [10, met],
      [10, notMet],
      [11, met],
    ],
    { metDay: 11, withoutDay: 10, state: STATE.met, disagreed: 0 },
  ],
])("%s", (_, looks, expected) => {
  const rows = looks.map(([day, result]) => ({ child: 0, skill: 0, day, result, exact: 0, observer: -1 }));
  const program = {
    children: [{ birth: 0, gestationDays: null }],
    rows,
    bases: ["corrected" as const],
    rule: USUAL_RULE,
  };
  expect(cellOf(attain(cohortOf(program), 100), 0)).toMatchObject(expected);
});
