import * as fc from "fast-check";
import { sortLooks } from "../../src/cohort/looks";
import { observationsOf, type Row, smallPrograms } from "./small-cohorts";

const row = (child: number, day: number, skill: number): Row => ({
  child,
  day,
  skill,
  result: 2,
  exact: 0,
  observer: -1,
});

function asRows(looks: ReturnType<typeof sortLooks>): Row[] {
  const rows: Row[] = [];
  for (let child = 0; child + 1 < looks.offsets.length; child += 1) {
    for (let at = looks.offsets[child] as number; at < (looks.offsets[child + 1] as number); at += 1) {
      rows.push({
        child,
        skill: looks.skill[at] as number,
        day: looks.day[at] as number,
        result: looks.result[at] as number,
        exact: looks.exact[at] as number,
        observer: looks.observer[at] as number,
      });
    }
  }
  return rows;
}

test("by child, then by day, then in the order of the sheet", () => {
  const looks = sortLooks(observationsOf([row(1, 9, 0), row(0, 7, 1), row(1, 5, 2), row(0, 7, 3), row(0, -2, 4)]), 3);
  expect([...looks.offsets]).toEqual([0, 3, 5, 5]);
  expect([...looks.skill]).toEqual([4, 1, 3, 2, 0]);
  expect([...looks.day]).toEqual([-2, 7, 7, 5, 9]);
});

test("no looks, and no children", () => {
  expect([...sortLooks(observationsOf([]), 2).offsets]).toEqual([0, 0, 0]);
  expect([...sortLooks(observationsOf([]), 0).offsets]).toEqual([0]);
});

test("the highest skill number, far days and every bit of a look come through", () => {
  const rows = [
    { child: 0, skill: 65_535, day: 60_000, result: 3, exact: 1, observer: 2 },
    { child: 0, skill: 0, day: -60_000, result: 0, exact: 0, observer: -1 },
  ];
  expect(asRows(sortLooks(observationsOf(rows), 1))).toEqual([rows[1], rows[0]]);
});

test("the same as a stable sort of objects", () => {
  fc.assert(
    fc.property(smallPrograms(), ({ children, rows }) => {
      const sorted = [...rows].sort((a, b) => a.child - b.child || a.day - b.day);
      expect(asRows(sortLooks(observationsOf(rows), children.length))).toEqual(sorted);
    }),
  );
});

test("many children in many parcels keep their own looks", () => {
  const childCount = 3000;
  const rows = Array.from({ length: 90_000 }, (_, at) => row((at * 7919) % childCount, (at * 104_729) % 977, at % 30));
  const sorted = [...rows].sort((a, b) => a.child - b.child || a.day - b.day);
  expect(asRows(sortLooks(observationsOf(rows), childCount))).toEqual(sorted);
});

test("one child with nearly all the looks", () => {
  const rows = Array.from({ length: 40_000 }, (_, at) => row(at % 4000 === 0 ? at / 4000 : 9999, (at * 7) % 500, 1));
  const sorted = [...rows].sort((a, b) => a.child - b.child || a.day - b.day);
  expect(asRows(sortLooks(observationsOf(rows), 10_000))).toEqual(sorted);
});
