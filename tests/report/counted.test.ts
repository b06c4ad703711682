import { buildCohort } from "../../src/cohort/cohort";
import { readRecords } from "../../src/records/read-records";
import { countedSentences, lookSentences } from "../../src/report/counted";
import { usualSettings } from "../../src/settings/settings";
import { gridOf } from "../../src/workbook/grid-builder";
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

test("referrals without a day of receipt are said once, with their count", () => {
  const { sheets } = asWorkbook(input);
  const rows = [
    ["Child", "Referred", "Area", "Received"],
    ["C1", "2025-03-01", "speech", "2025-03-03"],
    ["C1", "2025-04-01", "speech", null],
    ["C1", "2025-05-01", "speech", null],
  ];
  const referrals = { name: "Referrals", grid: gridOf(rows), tables: [], merged: [] };
  const records = readRecords({ dateSystem: 1900, sheets: [...sheets, referrals] }, usualSettings);
  expect(countedSentences(records).at(-1)).toBe(
    "2 of 3 referrals have no day under Received; each counts as received on the day it was made.",
  );
});
