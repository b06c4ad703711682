import { SETTING_NAMES } from "../../src/settings/settings";
import { HostFailure } from "../../src/workbook/host";
import { WorkFailed } from "../../taskpane/client/work-failed";
import { decisionInWords, KINDS } from "../../taskpane/words/decisions";
import { Cancelled, toldOfFailure } from "../../taskpane/words/failures";
import { countsInWords, recordsTitle } from "../../taskpane/words/records";
import { stepInWords } from "../../taskpane/words/report";
import { AS_OF, fieldMessages, FROM, MORE_SETTINGS } from "../../taskpane/words/settings";
import type { RecordsFound } from "../../taskpane/worker/found";

const FOUND: RecordsFound = {
  failure: null,
  tables: [],
  groups: [],
  counts: { error: 0, warning: 0, note: 0 },
  groupColumns: [],
  skills: [],
  lastLook: null,
  quarterEnd: null,
};

test.each([
  [{ error: 0, warning: 0, note: 3 }, "Every row could be read and used"],
  [{ error: 0, warning: 1, note: 0 }, "Every row is used; 1 finding wants a look"],
  [{ error: 1234, warning: 1, note: 0 }, "1,234 findings keep rows from being used"],
])("the title of the records says the finding: %j", (counts, title) => {
  expect(recordsTitle({ ...FOUND, counts })).toBe(title);
});

test("counts are said in words, none of them twice", () => {
  expect(countsInWords({ error: 2, warning: 0, note: 1 })).toBe(
    "Findings: 2 that keep a row from being used and 1 note.",
  );
  expect(countsInWords({ error: 0, warning: 0, note: 0 })).toBe("No findings.");
});

test("a host's failure is told in its own words, a cancel as no failure", () => {
  const text = "The sheet is protected. Unprotect it, and make the report again.";
  expect(toldOfFailure(new HostFailure("locked", text), "building")).toEqual({ tone: "stopped", text });
  expect(toldOfFailure(new Cancelled(), "reading").tone).toBe("done");
});

test("a failure of unknown kind says what happened and what to do, and never its own text", () => {
  const told = toldOfFailure(new Error("cell text of a child"), "saving");
  expect(told.text).toBe(
    "The file could not be saved. Try again; if it happens again, tell whoever looks after this add-in (kind of failure: Error).",
  );
  const stopped = toldOfFailure(new WorkFailed({ name: "WorkerStopped", message: null }), "building");
  expect(stopped.text).toMatch(/Nothing was added.*close other workbooks and try again/);
});

test("a field's message stands under its field, in the words of the pane", () => {
  const messages = fieldMessages({ asOf: "31.12.2026", recheck: "0", edges: "9, 3" });
  expect(messages.get("asOf")).toBe("As-of date: must be a date such as 2026-09-30.");
  expect(messages.get("recheck")).toBe("A look is out of date after: must be a whole number of days from 1 to 3650.");
  expect(messages.get("edges")).toMatch(/^Edges of the age bands: must be two or more rising ages/);
  expect(messages.get("level")).toBeUndefined();
});

test("an empty as-of date is asked for, and a first day after it is refused", () => {
  expect(fieldMessages({}).get("asOf")).toMatch(/fill in the as-of date/);
  expect(fieldMessages({ asOf: "2026-01-01", from: "2026-02-01" }).get("from")).toBe(
    "First day of the period: must be a date on or before the as-of date.",
  );
});

test("every setting that bears on a quarter has a field; those of a release wait for their place", () => {
  const fields = [AS_OF, FROM, ...MORE_SETTINGS].map(({ name }) => name as string);
  const release = ["minimumCell", "floor", "releaseMethod"];
  expect([...fields, "by", ...release].sort()).toEqual([...SETTING_NAMES].sort());
});

test("every kind of decision has its sentence and its line in the list", () => {
  expect(KINDS.map(({ kind }) => kind).sort()).toEqual(["date-order", "heading", "same-child", "skill-alias"]);
  expect(decisionInWords({ kind: "date-order", table: "Children", column: "Birth date", order: "day first" })).toBe(
    "Text dates of Children, Birth date, are read day first.",
  );
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
