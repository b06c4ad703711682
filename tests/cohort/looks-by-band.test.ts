import * as fc from "fast-check";
import { ageClock, ageMonthsOn, firstDayOfAge } from "../../src/age/correction";
import { bandIndex, USUAL_EDGES } from "../../src/age/bands";
import { EdgeDays } from "../../src/cohort/edge-days";
import { looksByBand, type LooksByBand } from "../../src/cohort/looks-by-band";
import { RESULT } from "../../src/records/records";
import { cohortOf, day, type Row, type SmallProgram, smallPrograms, USUAL_RULE } from "./small-cohorts";

/** The same counts, one look at a time, by the age of that day. */
function slowly({ children, rows, bases, rule }: SmallProgram, edges: readonly number[]): LooksByBand {
  const bandCount = edges.length + 1;
  const looks = new Uint32Array(bases.length * bandCount * 4);
  const seen = new Set<string>();
  const met = new Set<string>();
  for (const row of rows) {
    const child = children[row.child]!;
    const months = ageMonthsOn(ageClock(child.birth, child.gestationDays, rule), row.day, bases[row.skill]);
    const cell = row.skill * bandCount + bandIndex(months, edges);
    looks[cell * 4 + row.result]! += 1;
    seen.add(`${cell} ${row.child}`);
    if (row.result === RESULT.met) met.add(`${cell} ${row.child}`);
  }
  const counted = (keys: Set<string>) =>
    Uint32Array.from({ length: bases.length * bandCount }, (_, cell) => {
      return [...keys].filter((key) => key.startsWith(`${cell} `)).length;
    });
  return { bandCount, looks, childrenSeen: counted(seen), childrenMet: counted(met) };
}

const edgeLists = fc.oneof(
  fc.constant(USUAL_EDGES),
  fc.constant([12]),
  fc.constant(Array.from({ length: 40 }, (_, month) => month)),
  fc
    .uniqueArray(fc.double({ min: -6, max: 40, noNaN: true }), { minLength: 1, maxLength: 20 })
    .map((edges) => edges.sort((a, b) => a - b)),
  fc.integer({ min: -3, max: 36 }).map((from) => [from, from + 0.01, from + 0.02, from + 0.05, from + 1]),
);

test("the same as one look at a time, for edges of every kind", () => {
  fc.assert(
    fc.property(smallPrograms(), edgeLists, (program, edges) => {
      expect(looksByBand(cohortOf(program), edges)).toEqual(slowly(program, edges));
    }),
    { numRuns: 300 },
  );
});

test("edge days are the first days of those ages", () => {
  fc.assert(
    fc.property(
      smallPrograms(),
      edgeLists,
      fc.constantFrom("corrected" as const, "chronological" as const),
      (program, edges, basis) => {
        const { clocks } = cohortOf(program);
        const edgeDays = new EdgeDays(clocks, edges);
        for (const clock of clocks) {
          const days = new Float64Array(edges.length);
          edgeDays.fill(clock, basis, days);
          expect([...days]).toEqual(edges.map((edge) => firstDayOfAge(clock, edge, basis)));
        }
      },
    ),
  );
});

test("a child born at 32 weeks counts from the day it was due, until 24 months", () => {
  // Born January 31, 2022 at 32+0: 56 days early, due March 28, 2022. 3 months corrected on June 28, 2022, by birth date on 30 April.
  const look = (iso: string, skill: number, result: number): Row => ({
    child: 0,
    skill,
    day: day(iso),
    result,
    exact: 0,
    observer: -1,
  });
  const counts = looksByBand(
    cohortOf({
      children: [{ birth: day("2022-01-31"), gestationDays: 224 }],
      bases: ["corrected", "chronological"],
      rule: USUAL_RULE,
      rows: [
        look("2022-03-27", 0, 0),
        look("2022-06-27", 0, 1),
        look("2022-06-27", 1, 1),
        look("2022-06-28", 0, 2),
        look("2022-06-28", 0, 2),
        look("2022-04-29", 1, 0),
        look("2022-04-30", 1, 2),
        // Correction has stopped on January 31, 2024: 24 months at once, no look in between.
        look("2024-01-30", 0, 2),
        look("2024-01-31", 0, 3),
      ],
    }),
    [0, 3, 23, 24],
  );
  const cells = (skill: number) =>
    [0, 1, 2, 3, 4].map((band) => [...counts.looks.slice((skill * 5 + band) * 4, (skill * 5 + band + 1) * 4)]);
  expect(cells(0)).toEqual([
    [1, 0, 0, 0],
    [0, 1, 0, 0],
    [0, 0, 3, 0],
    [0, 0, 0, 0],
    [0, 0, 0, 1],
  ]);
  expect(cells(1)).toEqual([
    [0, 0, 0, 0],
    [1, 0, 0, 0],
    [0, 1, 1, 0],
    [0, 0, 0, 0],
    [0, 0, 0, 0],
  ]);
  expect([...counts.childrenSeen]).toEqual([1, 1, 1, 0, 1, 0, 1, 1, 0, 0]);
  expect([...counts.childrenMet]).toEqual([0, 0, 1, 0, 0, 0, 0, 1, 0, 0]);
});

test("more children than a byte counts", () => {
  const children = Array.from({ length: 700 }, () => ({ birth: day("2023-05-05"), gestationDays: null }));
  const rows = children.map((_, child) => ({
    child,
    skill: 0,
    day: day("2023-07-01"),
    result: 2,
    exact: 0,
    observer: -1,
  }));
  const counts = looksByBand(cohortOf({ children, rows, bases: ["corrected"], rule: USUAL_RULE }), [0, 3]);
  expect([...counts.childrenSeen]).toEqual([0, 700, 0]);
  expect([...counts.childrenMet]).toEqual([0, 700, 0]);
});

test("nobody and nothing counts as none", () => {
  const counts = looksByBand(cohortOf({ children: [], rows: [], bases: ["corrected"], rule: USUAL_RULE }), [0]);
  expect([...counts.looks]).toEqual(new Array(8).fill(0));
});

test.each([[[]], [[3, 3]], [[6, 3]], [[0, NaN]], [[0, Infinity]]])("edges %p are refused", (edges) => {
  const cohort = cohortOf({ children: [], rows: [], bases: ["corrected"], rule: USUAL_RULE });
  expect(() => looksByBand(cohort, edges)).toThrow(RangeError);
});
