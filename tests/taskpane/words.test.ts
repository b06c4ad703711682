import { SETTING_NAMES } from "../../src/settings/settings";
import { HostFailure } from "../../src/workbook/host";
import { WorkFailed } from "../../taskpane/client/work-failed";
import { PLAN_TIERS, type PlanReason } from "../../src/tables/caseload/plan-item";
import {
  CASELOAD_ABOUT,
  caseloadTitle,
  faultsInWords,
  looksInWords,
  noChoiceInWords,
  planInWords,
  therapistLabel,
  visitInShort,
  visitsMessage,
} from "../../taskpane/words/caseload";
import { decisionInWords, KINDS } from "../../taskpane/words/decisions";
import { Cancelled, toldOfFailure } from "../../taskpane/words/failures";
import { countsInWords, nextStep, notUsedInWords, recordsTitle } from "../../taskpane/words/records";
import {
  attackInWords,
  heldBackInWords,
  lossInWords,
  OTHER,
  PRESETS,
  releaseFaults,
  thresholdInWords,
} from "../../taskpane/words/release";
import { stepInWords } from "../../taskpane/words/report";
import {
  AS_OF,
  fieldMessages,
  FROM,
  MINIMUM_CELL,
  MORE_SETTINGS,
  placeOfSetting,
  RELEASE_METHOD,
  RELEASE_SETTINGS,
  SETTING_GROUPS,
} from "../../taskpane/words/settings";
import { understand } from "../../src/records/understanding/understand";
import type { RecordsFound } from "../../taskpane/worker/records/found";
import type { VisitToMake } from "../../taskpane/worker/caseload/listed";

const FOUND: RecordsFound = {
  failure: null,
  understanding: understand({ dateSystem: 1900, sheets: [] }),
  tables: [],
  groups: [],
  counts: { error: 0, warning: 0, note: 0 },
  groupColumns: [],
  therapists: null,
  skills: [],
  lastLook: null,
  quarterEnd: null,
};

const use = (table: string, rows: number, used: number) => ({
  table,
  sheet: table,
  address: "A1",
  rows,
  used,
  leftOut: {},
});

test("the title of the records says first what was left out, checks before all else, of several sheets together", () => {
  const tables = [use("Children", 61, 60), use("Observations", 4_000, 3_100), use("Observations", 239, 167)];
  expect(notUsedInWords(tables)).toBe("972 of 4,239 checks were not used. 1 of 61 rows of Children was not used.");
  expect(recordsTitle(FOUND)).toBe("Every row is used");
});

test.each([
  [{ isRead: false }, "read", "Read the workbook"],
  [{ open: { unsettled: 2, doubtful: 3, choices: 0 } }, "answer", "Say what 2 words mean"],
  [{ open: { unsettled: 0, doubtful: 3, choices: 0 } }, "confirm", "Confirm, and read it this way"],
  [{ open: { unsettled: 0, doubtful: 0, choices: 1 } }, "confirm", "Confirm, and read it this way"],
  [{ isOld: true }, "read", "Read the workbook again"],
  [{}, "quarter", "Go on to Quarter"],
])("one next step: %j", (state, does, label) => {
  const settled = { unsettled: 0, doubtful: 0, choices: 0 };
  expect(nextStep({ isRead: true, isOld: false, failure: null, open: settled, ...state })).toMatchObject({
    does,
    label,
  });
});

test("every setting of the quarter stands in one group of its place, and in one alone", () => {
  const grouped = SETTING_GROUPS.flatMap(({ fields }) => fields.map(({ name }) => name));
  expect(grouped.toSorted()).toEqual(MORE_SETTINGS.map(({ name }) => name).toSorted());
});

test("counts are said in words, none of them twice", () => {
  expect(countsInWords({ error: 2, warning: 0, note: 1 })).toBe("Problems found: 2 to fix and 1 for information.");
  expect(countsInWords({ error: 0, warning: 0, note: 0 })).toBe("No problems were found.");
});

test("a host's failure is told in its own words, a cancel as no failure", () => {
  const text = "The sheet is protected. Unprotect it, and make the report again.";
  expect(toldOfFailure(new HostFailure("locked", text), "building")).toEqual({ tone: "stopped", text });
  expect(toldOfFailure(new Cancelled(), "reading").tone).toBe("done");
});

test("a failure of unknown kind says what happened and what to do, and never its own text", () => {
  const told = toldOfFailure(new Error("cell text of a child"), "saving");
  expect(told.text).toBe(
    "The file could not be saved. Try again; if it happens again, tell the person who maintains this add-in (error: Error).",
  );
  const stopped = toldOfFailure(new WorkFailed({ name: "WorkerStopped", message: null }), "building");
  expect(stopped.text).toMatch(/Nothing was added.*close other workbooks and try again/);
});

test("a field's message stands under its field, in the words of the pane", () => {
  const messages = fieldMessages({ asOf: "31.12.2026", recheck: "0", edges: "9, 3" });
  expect(messages.get("asOf")).toBe("As-of date: must be a date such as 2026-09-30.");
  expect(messages.get("recheck")).toBe(
    "A skill needs a recheck after: must be a whole number of days from 1 to 3650, or none.",
  );
  expect(messages.get("edges")).toMatch(/^Edges of the age groups: must be two or more rising ages/);
  expect(messages.get("level")).toBeUndefined();
});

test("an empty as-of date is asked for, and a first day after it is refused", () => {
  expect(fieldMessages({}).get("asOf")).toMatch(/fill in the as-of date/);
  expect(fieldMessages({ asOf: "2026-01-01", from: "2026-02-01" }).get("from")).toBe(
    "First day of the period: must be a date on or before the as-of date.",
  );
});

test("every setting has a field in the place that it bears on", () => {
  const fields = [AS_OF, FROM, ...MORE_SETTINGS, MINIMUM_CELL, RELEASE_METHOD, ...RELEASE_SETTINGS];
  expect([...fields.map(({ name }) => name as string), "by"].sort()).toEqual([...SETTING_NAMES].sort());
  expect([...SETTING_NAMES].filter((name) => placeOfSetting(name) === "Release").sort()).toEqual([
    "floor",
    "minimumCell",
    "releaseMethod",
    "wholeGroups",
  ]);
});

test("a field that stands in another place is named with its place", () => {
  const fault = new Map([["minimumCell", "Least number of children: must be a whole number."]] as const);
  expect(faultsInWords([...fault])).toMatch(
    /^A field of Release needs checking before the children can be listed\. Least/,
  );
  expect(releaseFaults(fault)).toBe("Some fields need checking before anything can be prepared.");
  expect(releaseFaults(new Map([["recheck", "A skill needs a recheck after: must be days."]] as const))).toMatch(
    /^A field of Quarter needs checking before anything can be prepared\. A skill needs a recheck after/,
  );
});

test("the thresholds are said in plain words", () => {
  // CMS Cell Size Suppression Policy: no cell of 1 to 10.
  expect(thresholdInWords(11)).toMatch(/^Counts of 1 to 10 are held back, .* Zero may show\. .* CMS\.$/);
  expect(thresholdInWords(5)).toMatch(/^Counts of 1 to 4 are held back/);
  expect(thresholdInWords(2)).toMatch(/^A count of 1 is held back/);
  expect(PRESETS.map(({ value }) => value)).toEqual(["", "10", "5", OTHER]);
});

const PREPARED = {
  rule: { minimumCell: 11, method: "hide", base: null },
  protection: { counts: 40, hidden: 10, small: 6, loss: 20, bound: 19, stoppedEarly: false },
  printed: { counts: 60, heldBack: 15 },
  attack: { attacked: 6, witnesses: 2 },
} as const;

test("what is held back, the gap to the least loss and the attack are said in numbers", () => {
  expect(heldBackInWords(PREPARED)).toMatch(
    /^Of 60 counts in the tables, 15 are held back; .* 10 different counts: 6 small, 4 from/,
  );
  expect(lossInWords(PREPARED)).toMatch(/weighs 20, .* less than 19: this one is within 5\.0% of the best/);
  expect(lossInWords({ ...PREPARED, protection: { ...PREPARED.protection, bound: 20 } })).toMatch(
    /No other choice loses less\.$/,
  );
  expect(attackInWords(PREPARED)).toMatch(
    /^Nothing small\. 6 small counts were tested against a reader from outside .* at least 11, in its place: 2 such tables/,
  );
  const rounded = { ...PREPARED, rule: { minimumCell: 11, method: "round", base: 15 } } as const;
  expect(heldBackInWords(rounded)).toBe("All 60 counts are rounded to multiples of 15, and still add up.");
  expect(lossInWords(rounded)).toBeNull();
});

test("every kind of decision has its sentence and its line in the list", () => {
  expect(KINDS.map(({ kind }) => kind).sort()).toEqual(["date-order", "heading", "same-child", "skill-alias"]);
  expect(decisionInWords({ kind: "date-order", table: "Children", column: "Birth date", order: "day first" })).toBe(
    "Text dates of Children, Birth date, are read day first.",
  );
});

test("an empty list, a missing column and a lone therapist are each said in a sentence", () => {
  expect(noChoiceInWords(null)).toBe("The workbook has no column Therapist: the list has every child in the program.");
  expect(noChoiceInWords([""])).toBe("No row has a therapist: the list has every child in the program.");
  expect(noChoiceInWords(["T04"])).toBe("T04 is the only therapist in the records.");
  expect(noChoiceInWords(["", "T04"])).toBeNull();
  expect(["", "T04"].map(therapistLabel)).toEqual(["No therapist recorded", "T04"]);
  expect(caseloadTitle(null)).toBe("See one therapist’s children in order");
});

test("a visit is said in short and in full, in words that judge nobody", () => {
  const visit: VisitToMake = {
    child: "K-1",
    looks: (Object.keys(PLAN_TIERS) as PlanReason[]).map((why) => ({ why, names: ["Walks alone", "Waves"] })),
  };
  expect(visitInShort({ ...visit, looks: visit.looks.slice(2, 4) })).toBe(
    "possible loss, to confirm (2); past the window (2)",
  );
  expect(looksInWords(visit.looks[0]!)).toBe(
    "Sign without follow-up, to talk about with the child’s clinician first: Walks alone; Waves.",
  );
  const all = [visitInShort(visit), ...visit.looks.map(looksInWords), CASELOAD_ABOUT, planInWords([visit])].join(" ");
  expect(all).not.toMatch(/delay|normal|\bfail|deficit|disorder|diagnos|score|\bred\b|amber|green|undefined/i);
  expect(planInWords([])).toBe("Nothing needs another check before the next report.");
});

test("a number of visits that cannot be planned for is refused in words", () => {
  expect(visitsMessage("0")).toBe("Visits to plan for: must be a whole number from 1 to 120.");
  expect(visitsMessage("")).toBeUndefined();
});

test("a step names its table as the report does", () => {
  const job = {
    kind: "building",
    cancelling: false,
    progress: { step: "Making age-when-met", done: 0, of: 0 },
  } as const;
  expect(stepInWords(job, () => "Age when met")).toBe("Making Age when met");
  expect(stepInWords({ ...job, cancelling: true }, String)).toBe("Cancelling");
  expect(stepInWords({ ...job, progress: { step: "Adding the sheets", done: 1200, of: 3000 } }, String)).toBe(
    "Adding the sheets: 1,200 of 3,000",
  );
});
