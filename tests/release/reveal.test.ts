import { type DraftTable, HIDDEN } from "../../src/release/release-table";
import { reveal } from "../../src/release/reveal";

/** Cells: met and assessed of a small row, then of a large one; both round to multiples of 15. */
const PRINTED = [45, 45, 180, 210];

const draft = {
  ...{ id: "met-by-band", title: "", population: "", notes: [], columns: [] },
  rows: [0, 2].map((met) => [
    { kind: "count", cell: met },
    { kind: "count", cell: met + 1 },
    { kind: "figure", value: 0.745, needs: [met, met + 1], share: 1 },
    { kind: "figure", value: 0.611, needs: [met, met + 1] },
  ]),
} as unknown as DraftTable;

const released = (leastBase: number, isKnown: boolean) =>
  reveal(
    [draft],
    (cell) => PRINTED[cell]!,
    () => isKnown,
    leastBase,
  )[0]!.rows;

test("rounded counts print no percent and no interval from a base under 200, though both counts were known", () => {
  expect(released(200, false)).toEqual([
    [45, 45, null, null],
    [180, 210, 180 / 210, HIDDEN],
  ]);
  expect(released(200, true)[0]).toEqual([45, 45, null, null]);
});

test("counts that are not rounded keep their percents", () => {
  expect(released(0, true)[0]).toEqual([45, 45, 0.745, 0.611]);
});
