import fc from "fast-check";
import { ageWhenMet } from "../../functions";
import { finkelsteinWolfe1985 } from "../published/finkelstein-wolfe-1985";
import { freireich1963 } from "../published/freireich-1963";
import { hyde1980 } from "../published/hyde-1980";
import { inventedDelayed } from "../published/survival-invented";
import { turnbull1974 } from "../published/turnbull-1974";
import { answerOf, column, rowsOf } from "./call";

type Cell = number | null;
type Row = readonly Cell[];

const { sixMp, placebo } = freireich1963;

/** Exact ages stand in both columns; an age that is only known to be later has a blank `by`. */
function exactOrBlank({ time, met }: { readonly time: readonly number[]; readonly met: readonly number[] }): Row[] {
  return time.map((age, at) => [age, met[at] === 1 ? age : null]);
}

function columnsOf(rows: readonly Row[]): unknown[][][] {
  return [0, 1].map((at) => column(rows.map((row) => row[at])));
}

const blankWhereInfinite = (ages: readonly number[]) => ages.map((age) => (age === Infinity ? null : age));

describe("published", () => {
  test.each([
    ["6-mercaptopurine", sixMp],
    ["placebo", placebo],
  ] as const)("Freireich (1963), %s: quartiles and their log-log limits", (_arm, arm) => {
    const rows = rowsOf("AGEWHENMET", ...columnsOf(exactOrBlank(arm)), column(arm.quantiles.share));
    const { share, age, lower, upper } = arm.quantiles;
    expect(rows).toEqual(share.map((each, at) => [each, age[at], lower[at], upper[at], "Kaplan-Meier"]));
  });

  test("Freireich (1963): the log-rank test of the two arms", () => {
    const rows = [...exactOrBlank(sixMp), ...exactOrBlank(placebo)];
    const arms = rows.map((_, at) => (at < sixMp.time.length ? "6-MP" : "placebo"));
    const [row] = rowsOf("COMPAREAGES", ...columnsOf(rows), column(arms)) as unknown[][];
    expect(row?.[0]).toBeCloseTo(freireich1963.logRank.chiSquared, 10);
    expect(row?.[0]).toBeCloseTo(freireich1963.printed.logRank, 2);
    expect(row?.[2]).toBeCloseTo(freireich1963.logRank.p, 12);
    expect([row?.[1], row?.[3]]).toEqual([1, "log-rank"]);
  });

  test("Freireich (1963): the curve of 6-mercaptopurine, with what is left beyond week 35", () => {
    const curve = rowsOf("ATTAINMENTCURVE", ...columnsOf(exactOrBlank(sixMp))) as Row[];
    expect(curve.map((row) => row[0])).toEqual([...freireich1963.printed.age, 35]);
    expect(curve.map((row) => row[1])).toEqual([...freireich1963.printed.age, null]);
    freireich1963.printed.surviving.forEach((share, at) =>
      expect(1 - (curve[at]?.[3] as number)).toBeCloseTo(share, 3),
    );
    expect(curve.at(-1)?.[2]).toBeCloseTo(0.448179271708683, 12);
    expect(curve.at(-1)?.[3]).toBeNull();
  });

  test("Turnbull (1974): exact ages, intervals and ages not reached together", () => {
    const rows = turnbull1974.count.flatMap((count, at) =>
      Array<Row>(count).fill([turnbull1974.after[at] as number, blankWhereInfinite(turnbull1974.by)[at] as Cell]),
    );
    const curve = rowsOf("ATTAINMENTCURVE", ...columnsOf(rows)) as Row[];
    expect(curve.map((row) => row.slice(0, 2))).toEqual(
      turnbull1974.from.map((from, at) => [from, blankWhereInfinite(turnbull1974.to)[at]]),
    );
    curve.forEach((row, at) => expect(row[2]).toBeCloseTo(turnbull1974.mass[at] as number, 7));
    turnbull1974.printed.surviving.forEach((share, at) => expect(1 - (curve[at]?.[3] as number)).toBeCloseTo(share, 3));
  });

  test("Finkelstein & Wolfe (1985): the interval estimate, and its score test between the arms", () => {
    const { radiotherapy, withChemotherapy, from, to, mass } = finkelsteinWolfe1985;
    const [after, by] = [radiotherapy.after, blankWhereInfinite(radiotherapy.by)];
    const curve = rowsOf("ATTAINMENTCURVE", column(after), column(by)) as Row[];
    expect(curve.map((row) => row.slice(0, 2))).toEqual(from.map((age, at) => [age, to[at]]));
    curve.forEach((row, at) => expect(row[2]).toBeCloseTo(mass[at] as number, 7));
    const arms = [...after.map(() => 1), ...withChemotherapy.after.map(() => 2)];
    const [row] = rowsOf(
      "COMPAREAGES",
      column([...after, ...withChemotherapy.after]),
      column([...by, ...blankWhereInfinite(withChemotherapy.by)]),
      column(arms),
    );
    expect(row?.[1]).toBe(1);
    expect(row?.[3]).toBe("log-rank (score form for intervals)");
    // Fay & Shaw (2010), J Stat Softw 36(2), print p between 0.007 and 0.008 for these data, with either form of the scores: memory
    expect(row?.[2]).toBeGreaterThan(0.007);
    expect(row?.[2]).toBeLessThan(0.008);
  });

  test("delayed entry: the invented children of R's survival", () => {
    const rows = exactOrBlank({ time: inventedDelayed.exit, met: inventedDelayed.met });
    const entry = column(inventedDelayed.entry);
    const [median] = rowsOf("AGEWHENMET", ...columnsOf(rows), 0.5, null, entry);
    const { estimate, lower, upper } = inventedDelayed.median.loglog;
    expect(median).toEqual([0.5, estimate, lower, upper, "Kaplan-Meier"]);
    const [row] = rowsOf("COMPAREAGES", ...columnsOf(rows), column(inventedDelayed.group), entry) as unknown[][];
    expect(row?.[0]).toBeCloseTo(inventedDelayed.logRank.chiSquared, 10);
  });

  test("Hyde (1980): masses with delayed entry sum to 1", () => {
    const rows = exactOrBlank({ time: hyde1980.exit, met: hyde1980.met });
    const curve = rowsOf("ATTAINMENTCURVE", ...columnsOf(rows), column(hyde1980.entry)) as Row[];
    expect(curve.reduce((sum, row) => sum + (row[2] as number), 0)).toBeCloseTo(1, 12);
  });
});

describe("by hand", () => {
  test("four children seen at 6, between 6 and 9, between 9 and 12, and not by 12", () => {
    // disjoint intervals hold a quarter each: (0,6], (6,9], (9,12], beyond 12
    const [after, by] = [column([null, 6, 9, 12]), column([6, 9, 12, null])];
    expect(rowsOf("ATTAINMENTCURVE", after, by)).toEqual([
      [0, 6, expect.closeTo(0.25, 9), expect.closeTo(0.25, 9)],
      [6, 9, expect.closeTo(0.25, 9), expect.closeTo(0.5, 9)],
      [9, 12, expect.closeTo(0.25, 9), expect.closeTo(0.75, 9)],
      [12, null, expect.closeTo(0.25, 9), null],
    ]);
    const rows = rowsOf("AGEWHENMET", after, by, [[0.125, 0.5, 0.9]]);
    expect(rows[0]?.[1]).toBeCloseTo(3, 5);
    expect(rows[1]?.[1]).toBeCloseTo(9, 5);
    expect(rows.map((row) => row[4])).toEqual(Array(3).fill("interval-censored"));
    expect(rows[2]?.slice(0, 2)).toEqual([0.9, null]);
  });

  test("shares left out are the five of the method sheet; the usual level and seed change nothing", () => {
    const ages = [column([0, 6, 9, 12]), column([6, 9, 12, null])];
    const rows = rowsOf("AGEWHENMET", ...ages);
    expect(rows.map((row) => row[0])).toEqual([0.1, 0.25, 0.5, 0.75, 0.9]);
    expect(rowsOf("AGEWHENMET", ...ages, null, 0.95, null, 20_240_229)).toEqual(rows);
    expect(rowsOf("AGEWHENMET", ...ages, "", null, "", 0)).toEqual(rows);
  });

  test("nobody seen with the skill: nothing can be estimated, and all mass lies beyond the last look", () => {
    const ages = [column([3, 6]), column([null, ""])];
    expect(rowsOf("AGEWHENMET", ...ages, 0.5)).toEqual([[0.5, null, null, null, null]]);
    expect(rowsOf("ATTAINMENTCURVE", ...ages)).toEqual([[6, null, 1, null]]);
    expect(ageWhenMet(ages[0] as unknown[][], ages[1] as unknown[][], [[0.5]])[0]?.[1]).toMatchObject({
      code: "#N/A",
      message: "no child was seen with the skill",
    });
  });
});

describe("empty cells", () => {
  test("a by of 0 is blank and an after that is blank is 0; blank rows, or rows of zeros, are no children", () => {
    const nulls = rowsOf("ATTAINMENTCURVE", column([null, 6, 9, 12, null]), column([6, 9, 12, null, null]));
    const zeros = rowsOf("ATTAINMENTCURVE", column([0, 6, 9, 12, 0]), column([6, 9, 12, 0, 0]));
    expect(zeros).toEqual(nulls);
  });

  test.each([
    ["null, in every row", null, 2 / 4],
    ["text of no length, down to the last row that holds anything else", "", 1 / 3],
  ])("where a cell is %s, zeros are a child with the skill on the day of birth", (_where, blank, share) => {
    // at birth, not by 6, between 6 and 9, and a last row of zeros
    const rows = rowsOf("ATTAINMENTCURVE", column([0, 6, 6, 0]), column([0, blank, 9, 0]));
    expect(rows[0]).toEqual([0, 0, expect.closeTo(share, 9), expect.closeTo(share, 9)]);
  });

  test("an interval that ends on the due day, at the age of 0, begins before it", () => {
    expect(rowsOf("ATTAINMENTCURVE", column([-20, 0]), column([0, 5]))).toEqual([
      [-20, 0, expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)],
      [0, 5, expect.closeTo(0.5, 9), expect.closeTo(1, 9)],
    ]);
  });
});

test("the order of the rows changes no estimate", () => {
  const row = fc.tuple(
    fc.integer({ min: 0, max: 20 }),
    fc.option(fc.integer({ min: 1, max: 9 })),
    fc.constantFrom("N", "S"),
  );
  fc.assert(
    fc.property(fc.array(row, { minLength: 3, maxLength: 15 }), (rows) => {
      const given = (order: typeof rows) =>
        [order.map(([after]) => after), order.map(([after, width]) => (width === null ? null : after + width))].map(
          column,
        );
      const group = (order: typeof rows) => column(order.map(([, , site]) => site));
      const turned = [...rows].reverse();
      const [curve, again] = [rows, turned].map((order) => rowsOf("ATTAINMENTCURVE", ...given(order)) as number[][]);
      curve?.forEach((each, at) => expect(again?.[at]?.[2]).toBeCloseTo(each[2] as number, 6));
      const [p, other] = [rows, turned].map((order) => answerOf("COMPAREAGES", ...given(order), group(order)));
      if (p && other && "result" in p && "result" in other) {
        expect(other.result[0]?.[2]).toBeCloseTo(p.result[0]?.[2] as number, 6);
      } else expect(other).toEqual(p);
    }),
    { numRuns: 50 },
  );
});

/** R 4, survival::Surv: "Stop time must be > start time, NA created". A row lost unseen is worse than a refusal. */
describe("an entry that is not below the age", () => {
  const ages = column([7, 9]);
  const message = "Row 2: entry is not below the age: a child counts from the entry on, so the age must come after it.";

  test.each([
    ["AGEWHENMET", [ages, ages, null, null, column([4, 9])]],
    ["AGEWHENMET", [ages, column([7, null]), null, null, column([4, 10])]],
    ["ATTAINMENTCURVE", [ages, ages, column([4, 9])]],
    ["COMPAREAGES", [ages, ages, column(["N", "S"]), column([4, 9])]],
  ])("%s(%j) is refused", (name, args) => {
    expect(answerOf(name, ...args)).toEqual({ error: "#VALUE!", message });
  });

  test("of 0 beside an age of 0 is an empty cell", () => {
    const zeros = [column([0, 3, 5]), column([0, 3, 5]), 0.3];
    const [row] = rowsOf("AGEWHENMET", ...zeros, null, column([0, 0, 0]));
    expect(row?.slice(0, 2)).toEqual(rowsOf("AGEWHENMET", ...zeros)[0]?.slice(0, 2));
  });
});

describe("refusals", () => {
  const after = column([0, 6]);
  const by = column([6, null]);

  test.each([
    [
      "AGEWHENMET",
      [after, column([6, 5])],
      "#VALUE!",
      "Row 2: by is below after: the skill was met after one age and by a later one.",
    ],
    ["AGEWHENMET", [column([0, "six"]), by], "#VALUE!", "Row 2: after is not a number: type it with digits alone."],
    [
      "AGEWHENMET",
      [after, column([6, 9, 12])],
      "#VALUE!",
      "after has 2 rows where others have 3: give all columns the same.",
    ],
    ["AGEWHENMET", [after, by, 1.5], "#NUM!", "shares lie above 0 and go up to 1, such as 0.5."],
    ["AGEWHENMET", [after, by, 0], "#NUM!", "shares lie above 0 and go up to 1, such as 0.5."],
    ["AGEWHENMET", [after, by, null, 1], "#NUM!", "level lies between 0 and 1, such as 0.95."],
    ["AGEWHENMET", [after, by, null, null, null, -1], "#NUM!", "seed goes from 1 to 4294967295."],
    ["AGEWHENMET", [after, by, null, null, null, 1.5], "#VALUE!", "seed is a whole number."],
    [
      "AGEWHENMET",
      [after, by, null, null, after],
      "#VALUE!",
      "Row 1: entry takes ages that are exact (after equal to by) or not met (by blank), not ages between two checks.",
    ],
    [
      "AGEWHENMET",
      [
        [
          [0, 6],
          [6, 9],
        ],
        by,
      ],
      "#VALUE!",
      "after: give one column, not several.",
    ],
    ["AGEWHENMET", [after, by, null, [[0.9, 0.95]]], "#VALUE!", "level: give one cell, not a range."],
    ["AGEWHENMET", [after, by, null, [[0.9], [0.95]]], "#VALUE!", "level: give one cell, not a range."],
    ["ATTAINMENTCURVE", [null, null], "#N/A", "No row has an age."],
    ["COMPAREAGES", [after, by, column(["North", null])], "#VALUE!", "Row 2: group is empty: name the child's group."],
    ["COMPAREAGES", [after, by, "North"], "#N/A", "Cannot be compared: there is only one group."],
  ])("%s(%j) is %s", (name, args, error, message) => {
    expect(answerOf(name, ...args)).toEqual({ error, message });
  });
});
