/** What changed, on random pairs of workbooks, against a second implementation that shares no code with the program. */
import fc from "fast-check";
import { RecordsUnusable } from "../../src/records/read-records";
import { pairArbitrary, type Pair } from "../oracle/random-pair";
import { type ChangedRow, PARTS, whatChanged } from "../oracle/what-changed";
import { changedRows, changesOf } from "./changed-rows";

const RUNS = { numRuns: Number(process.env.WINDOWLINE_RUNS ?? 60) };

test("agrees with the second implementation, cell by cell", () => {
  fc.assert(
    fc.property(pairArbitrary(), (pair) => {
      const [ours, theirs] = [rowsOf(pair), whatChanged(pair.earlier, pair.later)].map(byKey);
      expect(ours).toEqual(theirs);
    }),
    RUNS,
  );
});

test("earlier and all parts add up to later, in every row", () => {
  fc.assert(
    fc.property(pairArbitrary(), (pair) => {
      for (const row of rowsOf(pair)) {
        expect(PARTS.reduce((sum, part) => sum + row[part], row.earlier)).toBe(row.later);
      }
    }),
    RUNS,
  );
});

test("the children behind a part add up to it", () => {
  fc.assert(
    fc.property(pairArbitrary(), ({ earlier, later }) => {
      const changes = usable(() => changesOf(earlier, later, true));
      for (const { skill, area, band, measure, group, parts } of changes.cells.filter((each) => each.skill !== "all")) {
        const own = changes.behind.filter(
          (each) =>
            JSON.stringify([each.skill, each.area, each.band, each.measure, each.group]) ===
            JSON.stringify([skill, area, band, measure, group]),
        );
        const sums = PARTS.map((part) => own.reduce((sum, each) => sum + (each.part === part ? each.change : 0), 0));
        expect(sums).toEqual(parts);
      }
    }),
    { numRuns: 20 },
  );
});

test("the order of rows of the later workbook changes nothing", () => {
  fc.assert(
    fc.property(pairArbitrary(), ({ earlier, later }) => {
      const turned = { ...later, observations: [...later.observations].reverse() };
      expect(rowsOf({ earlier, later: turned })).toEqual(rowsOf({ earlier, later }));
    }),
    { numRuns: 20 },
  );
});

function rowsOf({ earlier, later }: Pair): ChangedRow[] {
  return usable(() => changedRows(changesOf(earlier, later)));
}

/** A workbook of which no row can be used is refused as a whole; there is nothing to compare. */
function usable<Value>(make: () => Value): Value {
  try {
    return make();
  } catch (error) {
    fc.pre(!(error instanceof RecordsUnusable));
    throw error;
  }
}

function byKey(rows: readonly ChangedRow[]): Record<string, ChangedRow> {
  expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
  return Object.fromEntries(rows.map((row) => [row.key, row]));
}
