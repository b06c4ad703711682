import { appendEntry, EMPTY_LEDGER } from "../../src/release/ledger";
import { HIDDEN } from "../../src/release/release-table";
import { boundBy, ledgerInWords, lostToEarlier } from "../../src/release/words/ledger-in-words";
import { BANDS, CONTEXT, prepared, STEPS } from "./support/prepared";

test("a release log says what was released, for when and under which rule, and no count", () => {
  const { entry } = prepared();
  const definition = 'edges=[0,12,36] by=["Site"]';
  const ledger = appendEntry(EMPTY_LEDGER, { ...entry, definition });
  expect(ledgerInWords(ledger)).toEqual([
    expect.stringMatching(
      /^1\. As of September 30, 2026, period from July 1, 2026: Met by age group and Referral steps, by Site, ages cut at 0, 12, 36 months\. Rule: at least 11; 0 counts shown as they are\. Hash begins [0-9a-f]{8}\.$/,
    ),
  ]);
  expect(ledgerInWords(EMPTY_LEDGER)).toEqual([]);
});

test("what earlier releases take is what would show without them", () => {
  const alone = prepared([BANDS, STEPS]);
  const rows = STEPS.rows.map((row, at) =>
    at === 1 ? row.map((value, column) => (column === 2 ? HIDDEN : value)) : row,
  );
  const release = prepared([BANDS, { ...STEPS, rows }]);
  expect(lostToEarlier(release, alone, CONTEXT)).toEqual(["referral-steps: evaluated"]);
  expect(lostToEarlier(alone, alone, CONTEXT)).toEqual([]);
});

test("what a release binds later ones by is said before it is made", () => {
  expect(boundBy(prepared())).toMatch(
    /no later release of the same children and day can show what it holds back: 1 small counts?, and 2 /,
  );
});
