/** The counts of a caseload against the boxes of the second implementation, which shares no code with the program. */
import fc from "fast-check";
import { buildCohort } from "../../../src/cohort/cohort";
import { readRecords, RecordsUnusable } from "../../../src/records/read-records";
import { caseload } from "../../../src/tables/caseload";
import { tableContext } from "../../../src/tables/context";
import { asWorkbook } from "../../oracle/as-workbook";
import { ageMonths, isAtLeast } from "../../oracle/ages";
import { peopleOf } from "../../oracle/following";
import type { OracleInput, OracleRow } from "../../oracle/input";
import { oracleTables } from "../../oracle/oracle-tables";
import { cohortArbitrary } from "../../oracle/random-cohort";
import { settingsOf } from "../../records/book";
import { rowsByKey } from "./program";

test("losses, skills past their windows and out of date are those of skill status", () => {
  fc.assert(
    fc.property(cohortArbitrary({ maxChildren: 5 }), (drawn) => {
      const input = withoutFollows(drawn);
      const status = oracleTables(input)["skill-status"] ?? [];
      for (const row of rowsByKey(caseload(contextOf(input)))) {
        const own = status.filter(({ child }) => child === row.child);
        const count = (is: (each: (typeof own)[number]) => boolean) => own.filter(is).length;
        expect(row.lost).toBe(count(({ box }) => box === "lost"));
        expect(row.outOfDate).toBe(count(({ box }) => box === "out of date"));
        const belowMet = ({ state }: (typeof own)[number]) => state === "not met" || state === "emerging";
        const pastThen = (each: (typeof own)[number]) => belowMet(each) && isPastOn(input, each, String(each.lastLook));
        expect(row.pastWindow).toBe(count(pastThen));
        const closedSince = count((each) => belowMet(each) && each.window === "past window" && !pastThen(each));
        expect(row.dueUnchecked).toBeGreaterThanOrEqual(closedSince);
      }
      expect(new Set(status.map(({ child }) => child)).size).toBe(caseload(contextOf(input)).rows.length);
    }),
    { numRuns: 60 },
  );
});

/** The age on the day of the last check, against the close. */
function isPastOn(input: OracleInput, { child, skill }: OracleRow, day: string): boolean {
  const person = peopleOf(input).find(({ id }) => id === child)!;
  const { closes, ageBasis } = input.skills.find((each) => each.skill === skill)!;
  return closes !== null && isAtLeast(ageMonths(person, ageBasis, input.settings, day), closes);
}

/** Skills that replace others are counted apart, by hand, in caseload.test.ts. */
function withoutFollows(input: OracleInput): OracleInput {
  return { ...input, skills: input.skills.map((skill) => ({ ...skill, follows: null })) };
}

function contextOf(input: OracleInput) {
  const { asOf, from, enteredBy, belowDays, untilMonths, edges, recheckDays, disagreement } = input.settings;
  const settings = settingsOf({
    asOf,
    from,
    enteredBy,
    correctBelow: `${Math.floor(belowDays / 7)}+${belowDays % 7}`,
    correctUntil: untilMonths,
    edges,
    recheck: recheckDays === Infinity ? "none" : recheckDays,
    disagreement,
  });
  try {
    const records = readRecords(asWorkbook(input), settings);
    return tableContext(buildCohort(records, settings), settings, records);
  } catch (error) {
    fc.pre(!(error instanceof RecordsUnusable));
    throw error;
  }
}
