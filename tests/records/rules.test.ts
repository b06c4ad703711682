import { RULES, ruleOf } from "../../src/records/findings/rules";
import type { Decision } from "../../src/records/corrections/decisions";
import {
  book,
  CHILDREN,
  clean,
  type Given,
  listed,
  OBSERVATIONS,
  read,
  type Rows,
  serial,
  sheet,
  SKILLS,
} from "./book";

/** Rows with single cells replaced: [row as on the sheet, column from 0, value]. */
function patched(rows: Rows, ...cells: [row: number, column: number, value: unknown][]): Rows {
  const copy = rows.map((row) => [...row]);
  for (const [row, column, value] of cells) {
    const own = (copy[row - 1] ??= []);
    own[column] = value;
  }
  return copy;
}

const children = (...cells: [number, number, unknown][]): Given => ({ children: patched(CHILDREN, ...cells) });
const looks = (...cells: [number, number, unknown][]): Given => ({ observations: patched(OBSERVATIONS, ...cells) });
const skills = (...cells: [number, number, unknown][]): Given => ({ skills: patched(SKILLS, ...cells) });

const REFERRAL_HEADINGS = ["Child", "Referred", "Area", "Reason", "From", "To", "Received", "Evaluated"].concat([
  "Eligible",
  "Plan",
  "Late reason",
  "Closed",
]);
const referrals = (...rows: unknown[][]): Given => ({ more: [sheet("Ref", [REFERRAL_HEADINGS, ...rows])] });
const signs = (...rows: unknown[][]): Given => ({
  more: [sheet("Sg", [["Child", "Date", "Sign", "Seen", "Action"], ...rows])],
});
const ratings = (...rows: unknown[][]): Given => ({
  more: [
    sheet("Rt", [
      ["Child", "Outcome", "Entry date", "Entry rating", "Exit date", "Exit rating", "New since entry"],
      ...rows,
    ]),
  ],
});

interface Case {
  readonly name: string;
  readonly given: Given;
  readonly settings?: Record<string, unknown>;
  readonly decisions?: Decision[];
  readonly expected: readonly string[];
  /** Rows left out, by table and reason. */
  readonly leftOut?: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const CASES: readonly Case[] = [
  // Children
  {
    name: "last year's row of an enrollment that has ended since",
    given: children(
      [5, 0, "A1"],
      [5, 1, "2024-03-31"],
      [5, 2, "28+3"],
      [5, 3, "North"],
      [5, 4, "T1"],
      [5, 5, "2024-09-01"],
      [5, 6, "2026-02-01"],
    ),
    expected: ["enrolment-superseded A2"],
    leftOut: { Children: { "older row of the same enrollment": 1 } },
  },
  {
    name: "a birth date of forty years ago",
    given: children([2, 1, "1984-03-31"]),
    expected: ["age-implausible B2", "age-implausible C2", "age-implausible C3"],
  },
  {
    name: "a due date two years after birth, and one that is fine",
    given: children([1, 8, "EDC"], [3, 8, "2026-05-15"], [4, 8, "2025-01-27"]),
    expected: ["due-date-implausible I3"],
  },
  {
    name: "weeks early that are weeks of gestation",
    given: children([1, 8, "Weeks early"], [3, 8, 32], [4, 8, 6]),
    expected: ["weeks-early-illegal I3"],
  },
  {
    name: "a child blank",
    given: children([2, 0, " "]),
    expected: ["child-blank A2", "child-unknown A2", "child-unknown A3"],
  },
  {
    name: "a birth date blank",
    given: children([4, 1, null]),
    expected: ["birth-blank B4", "child-left-out A5"],
    leftOut: { Children: { "birth date blank": 1 }, Observations: { "child left out": 1 } },
  },
  {
    name: "a birth date that only another row gives",
    given: children([5, 0, "a1 "], [5, 1, null], [5, 5, "2026-06-01"], [2, 6, "2026-01-01"]),
    expected: ["birth-other-row B5"],
  },
  {
    name: "birth dates that differ",
    given: children([5, 0, "A3"], [5, 1, "2025-01-21"], [5, 5, "2026-01-01"]),
    expected: ["birth-conflict B4", "birth-conflict B5", "child-left-out A5"],
    leftOut: { Children: { "birth dates of one child differ": 2 } },
  },
  {
    name: "a two-digit birth year",
    given: children([4, 1, "20-Jan-25"]),
    expected: ["date-two-digit-year B4", "child-left-out A5"],
  },
  {
    name: "a birth after the as-of date",
    given: children([5, 0, "A4"], [5, 1, "2026-10-01"], [5, 5, "2026-10-02"]),
    settings: { asOf: "2026-09-30" },
    expected: ["date-after-as-of B5"],
  },
  { name: "an illegal gestation", given: children([2, 2, "28+8"]), expected: ["gestation-illegal C2"] },
  { name: "an undecided gestation", given: children([2, 2, 28.3]), expected: ["gestation-undecided C2"] },
  {
    name: "gestations that differ",
    given: children([5, 0, "A1"], [5, 1, "2024-03-31"], [5, 2, "29+3"], [5, 5, "2026-02-01"], [2, 6, "2026-01-01"]),
    expected: ["gestation-conflict C2", "gestation-conflict C5"],
  },
  { name: "a blank Enrolled", given: children([2, 5, null]), expected: ["enrolled-blank F2"] },
  {
    name: "an Enrolled that cannot be read leaves the enrolment out",
    given: children([4, 5, "spring"]),
    expected: ["date-unreadable F4", "child-left-out A5"],
  },
  { name: "enrolled before birth", given: children([2, 5, "2024-03-30"]), expected: ["enrolled-before-birth F2"] },
  {
    name: "left before enrolled",
    given: children([4, 6, "2025-02-01"]),
    expected: ["left-before-enrolled G4", "child-left-out A5"],
  },
  {
    name: "left on the day of enrolment",
    given: children([4, 6, "2025-03-01"]),
    expected: ["left-on-enrolment G4", "outside-enrolment C5"],
  },
  {
    name: "overlapping enrolments",
    given: children([5, 0, "A1"], [5, 1, "2024-03-31"], [5, 5, "2025-01-01"]),
    expected: ["enrolment-overlap F5"],
  },
  {
    name: "enrolments one after the other",
    given: children([5, 0, "A2"], [5, 1, "2024-05-15"], [5, 5, "2026-01-15"]),
    expected: [],
  },
  {
    name: "enrolled, or left, after the as-of date",
    given: children([2, 5, "2026-12-01"], [4, 6, "2026-12-01"]),
    settings: { asOf: "2026-09-30" },
    expected: ["enrolled-after-as-of F2", "enrolled-after-as-of G4", "outside-enrolment C2", "outside-enrolment C3"],
  },
  {
    name: "an exact copy of a child",
    given: children(
      [5, 0, "a3"],
      [5, 1, "2025-01-20"],
      [5, 2, 38],
      [5, 3, "North"],
      [5, 4, "T1"],
      [5, 5, "2025-03-01"],
      [5, 7, "F1"],
    ),
    expected: ["exact-copy A5"],
    leftOut: { Children: { "exact copy": 1 } },
  },
  {
    name: "a row of totals",
    given: children([5, 0, "Total"], [5, 1, 3]),
    expected: ["total-row A5"],
    leftOut: { Children: { "total row": 1 } },
  },
  // Observations
  {
    name: "a child nobody knows",
    given: looks([2, 0, "A9"]),
    expected: ["child-unknown A2"],
    leftOut: { Observations: { "child not in Children": 1 } },
  },
  { name: "a skill nobody knows", given: looks([2, 1, "flies"]), expected: ["skill-unknown B2"] },
  { name: "a skill blank", given: looks([2, 1, null]), expected: ["skill-blank B2"] },
  {
    name: "a date blank",
    given: looks([2, 2, 0]),
    expected: ["date-blank C2"],
    leftOut: { Observations: { "date blank": 1 } },
  },
  { name: "a result blank", given: looks([2, 3, null]), expected: ["result-blank D2"] },
  { name: "a result that is none of the four", given: looks([2, 3, "maybe"]), expected: ["result-unknown D2"] },
  {
    name: "several faults in one row count once",
    given: looks([2, 0, "A9"], [2, 3, "maybe"]),
    expected: ["child-unknown A2", "result-unknown D2"],
    leftOut: { Observations: { "child not in Children": 1 } },
  },
  { name: "an error cell", given: looks([2, 2, "#N/A"]), expected: ["cell-error C2"] },
  { name: "a look before birth", given: looks([2, 2, "2024-03-30"], [2, 5, null]), expected: ["date-before-birth C2"] },
  {
    name: "a look on the day of birth is used",
    given: looks([2, 2, "2024-03-31"]),
    expected: ["outside-enrolment C2"],
  },
  {
    name: "a look after the as-of date",
    given: looks(),
    settings: { asOf: "2026-02-09" },
    expected: ["date-after-as-of C5"],
    leftOut: { Observations: { "after the as-of date": 1 } },
  },
  { name: "a look on the as-of date is used", given: looks(), settings: { asOf: "2026-02-10" }, expected: [] },
  {
    name: "a row entered after the cut-off",
    given: looks(),
    settings: { enteredBy: "2026-02-10" },
    expected: ["entered-after-cut-off F5"],
  },
  {
    name: "a row entered before it was seen",
    given: looks([5, 5, "2026-02-09"]),
    expected: ["entered-before-seen F5"],
  },
  { name: "an entry date that cannot be read", given: looks([5, 5, "later"]), expected: ["cell-not-read F5"] },
  {
    name: "a look after leaving is used and noted",
    given: looks([4, 2, "2026-01-15"], [4, 5, "2026-01-16"]),
    expected: ["outside-enrolment C4"],
  },
  {
    name: "a look on the last day before leaving",
    given: looks([4, 2, "2026-01-14"], [4, 5, "2026-01-16"]),
    expected: [],
  },
  {
    name: "an exact copy of a look",
    given: looks(
      [6, 0, "a3"],
      [6, 1, " WALKS"],
      [6, 2, "2026-02-10"],
      [6, 3, "Met"],
      [6, 4, "t1"],
      [6, 5, "2026-02-11"],
    ),
    expected: ["exact-copy A6"],
  },
  {
    name: "two observers who disagree, listed once",
    given: looks(
      [6, 0, "A3"],
      [6, 1, "walks"],
      [6, 2, "2026-02-10"],
      [6, 3, "not met"],
      [6, 4, "T2"],
      [7, 0, "A3"],
      [7, 1, "walks"],
      [7, 2, "2026-02-10"],
      [7, 3, "emerging"],
      [7, 4, "T3"],
    ),
    expected: ["results-differ D6"],
  },
  {
    name: "two observers who agree",
    given: looks([6, 0, "A3"], [6, 1, "walks"], [6, 2, "2026-02-10"], [6, 3, "met"], [6, 4, "T2"]),
    expected: [],
  },
  { name: "two-digit years", given: looks([2, 2, "02/10/24"]), expected: ["date-two-digit-year C2"] },
  {
    name: "an order of day and month that nothing settles",
    given: looks([2, 2, "02/10/2024"]),
    expected: ["date-order-unknown C2"],
  },
  {
    name: "text dates that contradict each other",
    given: looks([2, 2, "13/10/2024"], [3, 2, "10/13/2024"]),
    expected: ["date-order-contradicts C2", "date-order-contradicts C3"],
  },
  { name: "a date with a time", given: looks([2, 2, serial("2024-10-02") + 0.5]), expected: ["date-time-dropped C2"] },
  { name: "an observer cell that is an error", given: looks([2, 4, "#REF!"]), expected: ["cell-not-read E2"] },
  // Skills
  {
    name: "a skill id twice",
    given: skills([5, 0, "Sits"], [5, 1, "Sits up"], [5, 2, "gross motor"], [5, 4, 7]),
    expected: ["skill-twice A5"],
  },
  {
    name: "a window that closes before it opens",
    given: skills([2, 4, 3.8]),
    expected: ["skill-left-out B2", "skill-left-out B3", "skill-left-out B4", "window-empty E2"],
    leftOut: { Skills: { "window closes before it opens": 1 }, Observations: { "skill left out": 3 } },
  },
  { name: "months out of range", given: skills([3, 4, 900]), expected: ["month-illegal E3", "follows-unknown H4"] },
  { name: "a share as percent", given: skills([3, 6, 75]), expected: ["share-as-percent G3", "follows-unknown H4"] },
  { name: "a share out of range", given: skills([3, 6, -0.5]), expected: ["share-illegal G3", "follows-unknown H4"] },
  { name: "a share in words", given: skills([3, 6, "most"]), expected: ["number-unreadable G3", "follows-unknown H4"] },
  {
    name: "an age basis nobody knows",
    given: skills([3, 5, "mixed"]),
    expected: ["age-basis-unknown F3", "follows-unknown H4"],
  },
  { name: "an area blank", given: skills([3, 2, null]), expected: ["cell-blank C3", "follows-unknown H4"] },
  {
    name: "skills that follow in a circle",
    given: skills([3, 7, "walks"]),
    expected: ["follows-circle H3", "follows-circle H4"],
  },
  { name: "a skill that follows itself", given: skills([3, 7, "crawls"]), expected: ["follows-circle H3"] },
  { name: "blank opens and closes", given: skills([3, 3, null], [3, 4, null]), expected: [] },
  // Referrals
  {
    name: "a clean referral",
    given: referrals([
      "A1",
      "2025-01-10",
      "Speech; gross motor",
      "r",
      "f",
      "t",
      null,
      "2025-02-01",
      "yes",
      "2025-02-10",
      "Family",
      "2025-03-01",
    ]),
    expected: [],
  },
  {
    name: "a referral of an area nobody knows",
    given: referrals(["A1", "2025-01-10", "speech; tap dance"]),
    expected: ["area-unknown C2"],
    leftOut: { Referrals: { "area not known": 1 } },
  },
  {
    name: "areas apart by a comma, an ampersand or a slash",
    given: referrals(["A1", "2025-01-10", "speech, fine motor"], ["A1", "2025-01-11", "Sensory & Cognitive / Speech"]),
    expected: [],
  },
  {
    name: "a referral for an area that a person settled",
    given: referrals(["A1", "2025-01-10", "Walking & tap dance"]),
    decisions: [
      { kind: "area", word: "walking", means: "gross motor" },
      { kind: "area", word: "Tap dance", means: "gross motor; social-emotional" },
    ],
    expected: [],
  },
  {
    name: "a referral before birth",
    given: referrals(["A1", "2024-03-30", "speech"]),
    expected: ["date-before-birth B2"],
  },
  {
    name: "a referral after the as-of date",
    given: referrals(["A1", "2026-10-01", "speech"]),
    settings: { asOf: "2026-09-30" },
    expected: ["date-after-as-of B2"],
  },
  {
    name: "a referral outside enrolment",
    given: referrals(["A1", "2024-08-31", "speech"]),
    expected: ["outside-enrolment B2"],
  },
  {
    name: "an exact copy of a referral",
    given: referrals(["A1", "2025-01-10", "speech"], ["a1", "2025-01-10", "speech"]),
    expected: ["exact-copy A3"],
  },
  {
    name: "evaluated before referred",
    given: referrals(["A1", "2025-01-10", "speech", "", "", "", null, "2025-01-09"]),
    expected: ["evaluated-before-referred H2"],
    leftOut: { Referrals: { "evaluated before referred": 1 } },
  },
  {
    name: "received before referred",
    given: referrals(["A1", "2025-01-10", "speech", "", "", "", "2025-01-09"]),
    expected: ["step-before G2"],
  },
  {
    name: "a plan before the evaluation",
    given: referrals(["A1", "2025-01-10", "speech", "", "", "", null, "2025-02-09", "yes", "2025-02-08"]),
    expected: ["plan-before-evaluation J2"],
  },
  {
    name: "an evaluation after the as-of date",
    given: referrals(["A1", "2025-01-10", "speech", "", "", "", null, "2026-10-01"]),
    settings: { asOf: "2026-09-30" },
    expected: ["step-after-as-of H2"],
  },
  {
    name: "words that are none of the column's",
    given: referrals(["A1", "2025-01-10", "speech", "", "", "", null, null, "perhaps", null, "weather"]),
    expected: ["word-unknown I2", "word-unknown K2"],
  },
  // Signs
  { name: "a clean sign", given: signs(["A1", "2025-01-10", "Turns away", "Present", "2025-01-12"]), expected: [] },
  {
    name: "a seen nobody knows",
    given: signs(["A1", "2025-01-10", "Turns away", "hm"]),
    expected: ["seen-unknown D2"],
  },
  {
    name: "an action before the sign",
    given: signs(["A1", "2025-01-10", "Turns away", "present", "2025-01-09"]),
    expected: ["step-before E2"],
  },
  // Ratings
  { name: "a clean rating", given: ratings(["A1", "1", "2025-01-10", 3, "2026-01-10", 5, "yes"]), expected: [] },
  { name: "a rating of 8", given: ratings(["A1", "1", "2025-01-10", 8]), expected: ["rating-illegal D2"] },
  { name: "a rating of 2.5", given: ratings(["A1", "1", "2025-01-10", 2.5]), expected: ["rating-illegal D2"] },
  {
    name: "an exit before the entry",
    given: ratings(["A1", "1", "2025-01-10", 3, "2025-01-09", 4]),
    expected: ["exit-before-entry E2"],
  },
  {
    name: "an outcome rated twice",
    given: ratings(["A1", "1", "2025-01-10", 3], ["A1", "1", "2025-02-10", 4]),
    expected: ["rating-twice B3"],
  },
  {
    name: "better at exit with nothing new",
    given: ratings(["A1", "1", "2025-01-10", 3, "2026-01-10", 5, "no"]),
    expected: ["rating-impossible G2"],
  },
  {
    name: "worse at exit, and not said whether anything is new",
    given: ratings(["A1", "1", "2025-01-10", 4, "2026-01-10", 3, null]),
    expected: ["new-since-entry-blank G2"],
  },
  {
    name: "not said whether anything is new, where it does not matter",
    given: ratings(["A1", "1", "2025-01-10", 4, "2026-01-10", 5, null], ["A1", "2", "2025-01-10", 3, "2026-01-10", 3]),
    expected: [],
  },
  // Decisions
  {
    name: "a decision that is needed",
    given: looks([5, 0, "A3-old"]),
    decisions: [{ kind: "same-child", child: "A3", alias: "a3-OLD" }],
    expected: ["decision-applied "],
  },
  {
    name: "a decision that nothing needs",
    given: looks(),
    decisions: [{ kind: "skill-alias", skill: "walks", alias: "strolls" }],
    expected: ["decision-unused "],
  },
  {
    name: "a revoked decision",
    given: looks([5, 0, "A3-old"]),
    decisions: [{ kind: "same-child", child: "A3", alias: "A3-old", revoked: true }],
    expected: ["child-unknown A5"],
  },
];

test.each(CASES)("$name", ({ given, settings, decisions, expected, leftOut }) => {
  const records = read(given, settings ?? {}, decisions ?? []);
  expect(listed(records).sort()).toEqual([...expected].sort());
  for (const use of records.input) {
    expect(use.used + Object.values(use.leftOut).reduce((a, b) => a + b, 0)).toBe(use.rows);
    if (leftOut?.[use.table]) expect(use.leftOut).toEqual(leftOut[use.table]);
  }
});

test("a row is left out exactly where an error says so", () => {
  for (const { given, settings, decisions } of CASES) {
    const records = read(given, settings ?? {}, decisions ?? []);
    const errors = records.findings.filter(({ severity }) => severity === "error");
    const rows = new Set(errors.map(({ sheet: name, cell }) => `${name} ${cell.replace(/\D/g, "")}`));
    const left = records.input.reduce((sum, { rows: all, used }) => sum + all - used, 0);
    expect(rows.size).toBe(left);
  }
});

test("no two rules share an id, and every error has a reason", () => {
  expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length);
  for (const rule of RULES) {
    expect(rule.reason !== "").toBe(rule.severity === "error");
    expect(`${rule.explanation}${rule.expected}${rule.advice}`).not.toMatch(/undefined|null/);
  }
  expect(() => ruleOf("no-such-rule")).toThrow(RangeError);
});

test("every rule has a case in the tests of the records", () => {
  const elsewhere = ["table-missing", "table-empty", "heading-unknown", "heading-twice", "heading-beside"].concat([
    "cell-no-value",
    "id-is-date",
    "date-column-swapped",
    "gestation-is-date",
    "column-not-found",
    "heading-not-read",
    "heading-again",
    "day-in-title",
    "result-needs-date",
    "result-left-out",
    "area-left-out",
    // of several files: tests/records/sources
    "copy-in-other-file",
    "site-from-file",
    "file-not-used",
    "enrolment-two-sites",
  ]);
  const cased = CASES.flatMap(({ expected }) => expected.map((each) => each.split(" ")[0]));
  expect(RULES.map(({ id }) => id).filter((id) => !cased.includes(id) && !elsewhere.includes(id))).toEqual([]);
});

test("the clean workbook has no case of its own", () => {
  expect(listed(read(book(clean()), { asOf: "2026-09-30", enteredBy: "2026-09-30" }))).toEqual([]);
});

test("a referral received only after the as-of date counts from the day of referral, as one without that day does", () => {
  const given = referrals(
    ["A1", "2025-01-10", "speech", "", "", "", "2025-02-01"],
    ["A1", "2025-01-12", "speech", "", "", "", null],
  );
  const { referrals: rows } = read(given, { asOf: "2025-01-20" });
  expect(Array.from(rows?.received ?? [])).toEqual([...(rows?.referred ?? [])]);
});

test("a referral for a word that a person left out is counted, and not listed", () => {
  const records = read(referrals(["A1", "2025-01-10", "?"]), {}, [{ kind: "area", word: "?", means: "leave out" }]);
  expect(listed(records)).toEqual([]);
  expect(records.input.find(({ table }) => table === "Referrals")).toMatchObject({
    used: 0,
    leftOut: { "left out by you": 1 },
  });
});
