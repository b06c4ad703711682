/** Every table of the catalogue against what its maker gives, on the invented sample. */
import { buildCohort } from "../../src/cohort/cohort";
import { readRecords } from "../../src/records/read-records";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { canBeMade, RELEASABLE_IDS, TABLE_CATALOGUE, TABLE_IDS, tableIdOf } from "../../src/tables/catalogue";
import { tableContext } from "../../src/tables/context";
import { AgeEstimates } from "../../src/tables/estimates";
import type { Changes } from "../../src/tables/what-changed/changed-cell";
import { settingsOf } from "../records/book";
import { asRead } from "../sample/as-read";

const settings = settingsOf({ asOf: "2026-09-30" });
const records = readRecords(asRead(sampleSheets(makeSample({ children: 16, seed: 3 }))), settings, []);
const changes: Changes = {
  columns: [],
  earlierDay: 0,
  laterDay: 0,
  isFromReport: false,
  cells: [],
  whole: [],
  behind: [],
};
const all = { ...records, changes };
const estimates = new AgeEstimates(tableContext(buildCohort(records, settings), settings, all));

const OF_TWO_RUNS = ["what-changed", "what-changed-children"];

test.each(TABLE_IDS)("%s: its maker gives the table of that name, internal or not as declared", (id) => {
  const { make, internal } = TABLE_CATALOGUE[id];
  expect(make(estimates)).toMatchObject({ id, ...(internal ? { internal } : {}) });
  expect(make(estimates).internal ?? false).toBe(internal);
});

test("rows of single children are never part of a release", () => {
  expect(RELEASABLE_IDS.filter((id) => TABLE_CATALOGUE[id].internal)).toEqual([]);
});

test("a name that a person types finds its table; the old spelling of one is still known", () => {
  expect(tableIdOf("trend")).toBe("trend");
  expect(tableIdOf("since-enrolment")).toBe("since-enrollment");
  expect(["Trend", "", "toString", "__proto__"].map(tableIdOf)).toEqual([null, null, null, null]);
});

test("a table cannot be made without the records that it needs", () => {
  const without = { ...records, referrals: null, ratings: null };
  const missing = TABLE_IDS.filter((id) => !canBeMade(id, without));
  expect(missing).toEqual(["referrals", "referral-scan", "referral-steps", "ratings", ...OF_TWO_RUNS]);
  expect(TABLE_IDS.filter((id) => !canBeMade(id, records))).toEqual(OF_TWO_RUNS);
  expect(TABLE_IDS.every((id) => canBeMade(id, all))).toBe(true);
});

test("sheets of tables can stand side by side: no two have one name", () => {
  const names = TABLE_IDS.map((id) => TABLE_CATALOGUE[id].name);
  expect(new Set(names).size).toBe(names.length);
});
