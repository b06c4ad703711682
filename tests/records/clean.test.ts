import { dayFromIso } from "../../src/age/day";
import { NO_DAY, RESULT } from "../../src/records/records";
import { book, clean, listed, read } from "./book";

const day = (iso: string) => dayFromIso(iso) as number;

describe("a clean long workbook", () => {
  const records = read(book(clean()), { asOf: "2026-09-30" });

  test("has no findings but the tables that are not there", () => {
    expect(listed(records)).toEqual([]);
    expect(records.findings.map(({ table, severity }) => [table, severity])).toEqual([
      ["Referrals", "note"],
      ["Signs", "note"],
      ["Ratings", "note"],
    ]);
  });

  test("gives children, gestations and enrolments as columns", () => {
    expect(records.children.ids).toEqual(["A1", "A2", "A3"]);
    expect([...records.children.birth]).toEqual(["2024-03-31", "2024-05-15", "2025-01-20"].map(day));
    expect([...records.children.gestationDays]).toEqual([28 * 7 + 3, 0, 38 * 7]);
    expect(records.children.family).toEqual(["", "F1", "F1"]);
    expect([...records.enrolments.enrolled]).toEqual(["2024-09-01", "2024-10-01", "2025-03-01"].map(day));
    expect([...records.enrolments.left]).toEqual([NO_DAY, day("2026-01-15"), NO_DAY]);
    expect(records.enrolments.columns.map(({ heading, values }) => [heading, values])).toEqual([
      ["Site", ["North", "South", "North"]],
      ["Therapist", ["T1", "T2", "T1"]],
    ]);
  });

  test("gives observations and skills", () => {
    const { observations, skills } = records;
    expect([...observations.child]).toEqual([0, 0, 1, 2]);
    expect([...observations.skill]).toEqual([0, 0, 0, 2]);
    expect([...observations.result]).toEqual([RESULT.notMet, RESULT.met, RESULT.emerging, RESULT.met]);
    expect([...observations.observer].map((each) => observations.observers[each])).toEqual(["T1", "T1", "T2", "T1"]);
    expect([...observations.entered]).toEqual(["2024-10-03", "2024-12-03", "2024-12-11", "2026-02-11"].map(day));
    expect(skills[2]).toEqual({
      id: "walks",
      label: "Walks alone",
      area: "gross motor",
      opensMonths: 8.2,
      closesMonths: 17.6,
      ageBasis: "chronological",
      expectedShare: 0.99,
      follows: 1,
      tryTogether: "",
      sense: null,
      basis: "WHO",
    });
  });

  test("counts rows used", () => {
    expect(records.input.map(({ table, sheet, address, rows, used }) => [table, sheet, address, rows, used])).toEqual([
      ["Children", "Kids", "A1:H4", 3, 3],
      ["Observations", "Looks", "A1:F5", 4, 4],
      ["Skills", "List", "A1:J4", 3, 3],
    ]);
    expect(records.counts).toEqual({ gestationNotRecorded: 1, enteredBlankUsed: 0, outsideEnrolmentUsed: 0 });
  });
});
