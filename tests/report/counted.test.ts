import { buildCohort } from "../../src/cohort/cohort";
import { readRecords } from "../../src/records/read-records";
import { lookSentences } from "../../src/report/counted";
import { usualSettings } from "../../src/settings/settings";
import { asWorkbook } from "../oracle/as-workbook";
import type { OracleInput } from "../oracle/input";

const child = {
  child: "C1",
  birth: "2025-01-01",
  gestation: null,
  site: "N",
  therapist: "T",
  enrolled: "2025-01-01",
  left: null,
};
const skill = { label: "a", area: "speech", opens: 1, closes: 9, ageBasis: null, expectedShare: null, follows: null };

/** By hand: two checks at two months, one at four; the second skill is checked once, at two months. */
const input: OracleInput = {
  children: [child],
  skills: [
    { ...skill, skill: "one" },
    { ...skill, skill: "two" },
  ],
  observations: [
    { child: "C1", skill: "one", date: "2025-03-01", result: "not met" },
    { child: "C1", skill: "two", date: "2025-03-01", result: "met" },
    { child: "C1", skill: "one", date: "2025-05-01", result: "met" },
  ],
  settings: {
    asOf: "2025-06-30",
    from: null,
    enteredBy: null,
    belowDays: 259,
    untilMonths: 24,
    edges: [0, 3, 6],
    recheckDays: 90,
    by: [],
  },
};

test("says where the observations were made, and which skills nobody checked", () => {
  const cohort = buildCohort(readRecords(asWorkbook(input), usualSettings), usualSettings);
  expect(lookSentences(cohort, [0, 3, 6])).toEqual([
    "0 to <3 months: 2 observations used; 0 of 2 skills were not checked in any child.",
    "3 to <6 months: 1 observation used; 1 of 2 skills were not checked in any child.",
  ]);
});
