import fc from "fast-check";
import { caseload } from "../../../src/tables/caseload";
import { AS_OF, caseloadOf, contextOf, only, type ProgramRows, type RowByKey, SKILL_ROWS } from "./program";

/**
 * Thirteen and a half months old on the as-of date, in the program since twelve and a half: no routine visit, no transition, no
 * opening is near, and no window closed while the child was here.
 */
const CALM = ["A", "2025-08-15", null, "T1", "2026-09-01", null];
const HERE_SINCE_BIRTH = ["A", "2025-08-15", null, "T1", "2025-09-01", null];
/** One check the day before, met: the child is not unknown. */
const MET = ["A", "who8", "2026-09-29", "met"];
const calm = (looks: unknown[][] = [], more: Partial<ProgramRows> = {}) =>
  only({ children: [CALM], looks: [MET, ...looks], ...more });
const notMet = (skills: readonly string[], date = "2026-09-01") => skills.map((skill) => ["A", skill, date, "not met"]);

describe("the six groups, by hand", () => {
  test("6: nothing noted, said as what was checked and when, never as all is well", () => {
    const row = calm();
    expect(row).toMatchObject({ priority: 6, lost: 0, signsOpen: 0, pastWindow: 0, dueUnchecked: 0, outOfDate: 0 });
    expect(row.reason).toMatch(
      /^Last checked on .*2026; 1 skill in 1 area checked in the last 90 days, none of them lost/,
    );
    expect(row.nextStep).toMatch(/^Check again at the next visit\..*The child's clinician decides\.$/);
    expect(row.nextStep).not.toMatch(/as planned|good time/);
  });

  test("1: a loss as recorded, and a loss that one check suggests, are worded apart", () => {
    const lost = calm([
      ["A", "who1", "2026-05-01", "met"],
      ["A", "who1", "2026-09-01", "lost"],
    ]);
    expect(lost).toMatchObject({ priority: 1, lost: 1 });
    expect(lost.reason).toMatch(/^Lost: Skill who 1 \(/);
    expect(lost.nextStep).toMatch(/child's clinician about the loss now; do not wait/);
    const toConfirm = calm([
      ["A", "who1", "2026-05-01", "met"],
      ["A", "who1", "2026-09-01", "not met"],
    ]);
    expect(toConfirm).toMatchObject({ priority: 1, lost: 1 });
    expect(toConfirm.reason).toMatch(/^Possible loss, to confirm: Skill who 1/);
    expect(toConfirm.nextStep).toMatch(/clinician about the possible loss now, and check it again/);
  });

  test("1: a present sign without a follow-up; one followed up, absent or not looked for is none", () => {
    const sign = (seen: string, action: string | null) => ({
      signs: [["A", "2026-09-02", "very stiff", seen, action]],
    });
    expect(calm([], sign("present", null))).toMatchObject({ priority: 1, signsOpen: 1 });
    expect(calm([], sign("present", null)).reason).toMatch(/^Warning sign without follow-up: very stiff \(/);
    expect(calm([], sign("present", "2026-09-09"))).toMatchObject({ priority: 6, signsOpen: 0 });
    expect(calm([], sign("absent", null))).toMatchObject({ priority: 6, signsOpen: 0 });
    expect(calm([], sign("not looked for", null))).toMatchObject({ priority: 6, signsOpen: 0 });
  });

  /** The close is 6 months: 15 February 2026. A quarter past it is 7.5 months: 15 March and 15 or 16 of 31 days, 30 or 31 March. */
  test.each([
    ["two of any window, in one area", notMet(["cdc1", "cdc3"], "2026-02-20"), 2],
    ["two across areas", notMet(["cdc1", "own2"], "2026-02-20"), 2],
    ["one of 99 in 100", notMet(["who1"], "2026-02-20"), 2],
    ["one of 75 in 100 past by a quarter", notMet(["cdc1"], "2026-03-31"), 2],
    ["one of 75 in 100 just past", notMet(["cdc1"], "2026-03-29"), 3],
    ["one without a source past by a quarter", notMet(["own1"], "2026-03-31"), 2],
    ["one without a source just past", notMet(["own1"], "2026-03-29"), 3],
    ["one that was not there on the day of the close", notMet(["cdc1"], "2026-02-15"), 3],
    ["one emerging counts like one not met", [["A", "who1", "2026-02-20", "emerging"]], 2],
  ])("2 and 3: %s", (_, looks, priority) => {
    const row = calm(looks);
    expect(row).toMatchObject({ priority, pastWindow: looks.length });
    expect(row.nextStep).toMatch(/clinician.*screening/);
  });

  test("past is judged at the last check: closed since then is due, not past", () => {
    const row = calm(notMet(["who1"], "2026-02-14"));
    expect(row).toMatchObject({ priority: 4, pastWindow: 0, dueUnchecked: 1 });
    expect(row.reason).toContain("Not met, and the window closed since the last check: Skill who 1.");
    expect(row.nextStep).toContain("Check now: Skill who 1.");
  });

  test("a check ten months old of a skill past its window is still past, and says how old it is", () => {
    const row = calm(notMet(["who1", "who2", "who3"], "2026-02-20"));
    expect(row).toMatchObject({ priority: 2, pastWindow: 3, outOfDate: 3 });
    expect(row.reason).toContain("Past the window at the last check: gross motor 2 and speech 1 (");
    expect(row.reason).toContain("Not met, last checked over 90 days ago: Skill who 1; Skill who 2; Skill who 3.");
  });

  test("a window without a source is worded as such", () => {
    expect(calm(notMet(["own1"])).reason).toContain("Skill own 1, an age without a source");
    expect(calm(notMet(["cdc1"])).reason).not.toContain("without a source");
  });

  test("3: observers who disagree, until a later check settles it; after a met, that day is a possible loss", () => {
    const twice = [
      ["A", "strolls", "2026-09-01", "met", "T1"],
      ["A", "strolls", "2026-09-01", "not met", "T2"],
    ];
    expect(calm(twice)).toMatchObject({ priority: 3, disagreements: 1, lost: 0 });
    expect(calm(twice).nextStep).toMatch(/Check again together .* tell the child's clinician what both saw/);
    expect(calm([...twice, ["A", "strolls", "2026-09-10", "met"]])).toMatchObject({ priority: 6, disagreements: 0 });
    expect(calm([["A", "strolls", "2026-05-01", "met", "T1"], ...twice])).toMatchObject({ priority: 1, lost: 1 });
  });

  test("4: never checked, nothing checked within the limit, or closed here and never checked", () => {
    const never = only({ children: [CALM] });
    expect(never).toMatchObject({ priority: 4, dueUnchecked: 0 });
    expect(never.reason).toMatch(/^Never checked\./);
    // 90 days before 30 September is 2 July; a check that old still holds.
    const last = (date: string) => only({ children: [CALM], looks: [["A", "who8", date, "met"]] });
    expect(last("2026-07-02")).toMatchObject({ priority: 6 });
    expect(last("2026-07-01")).toMatchObject({ priority: 4 });
    expect(last("2026-07-01").reason).toMatch(/^Nothing checked since/);
    const here = only({ children: [HERE_SINCE_BIRTH], looks: [MET] });
    // 24 skills that close at 6 months less the one that was checked, and one that closes at 10.
    expect(here).toMatchObject({ priority: 4, dueUnchecked: 24 });
    expect(here.reason).toContain("Never checked, and the window has closed:");
  });

  test("5: not met inside the window, checked over 90 days ago", () => {
    expect(calm(notMet(["strolls"], "2026-07-02"))).toMatchObject({ priority: 6, outOfDate: 0 });
    expect(calm(notMet(["strolls"], "2026-07-01"))).toMatchObject({ priority: 5, outOfDate: 1 });
  });

  test("5: a window that opens within 30 days of the as-of date, not one that is open already or met", () => {
    const bornOn = (birth: string) =>
      only({ children: [["A", birth, null, "T1", "2026-09-01", null]], looks: [["A", "who8", "2026-09-29", "met"]] });
    expect(bornOn("2025-02-28")).toMatchObject({ openingSoon: 1, priority: 5 });
    // Opens on 30 October, 30 days on; on 31 October, 31 days on; on the as-of date itself.
    expect(bornOn("2025-03-01")).toMatchObject({ openingSoon: 0 });
    expect(bornOn("2025-01-30")).toMatchObject({ openingSoon: 0 });
    const met = only({
      children: [["A", "2025-02-28", null, "T1", "2026-09-01", null]],
      looks: [["A", "later", "2026-09-01", "met"]],
    });
    expect(met).toMatchObject({ openingSoon: 0 });
  });

  test("a skill that a later one has replaced is neither past its window nor due", () => {
    const creeping = [["A", "creeps", "2026-03-01", "not met"]];
    expect(calm(creeping)).toMatchObject({ pastWindow: 0, dueUnchecked: 1, outOfDate: 1, priority: 4 });
    expect(calm([...creeping, ["A", "strolls", "2026-08-01", "met"]])).toMatchObject({
      pastWindow: 0,
      dueUnchecked: 0,
      outOfDate: 0,
      priority: 6,
    });
  });
});

describe("hearing and seeing", () => {
  const skills = (sense: string | null, area = "sensory") => [
    [...(SKILL_ROWS[0] as string[]), "Sense"],
    ["hears", "Hears", area, null, 6, "chronological", 0.75, null, null, "invented", sense],
    ["draws", "Draws", "fine motor", null, 6, "chronological", 0.75, null, null, "invented", null],
  ];
  const past = (rows: unknown[][], skill: string) =>
    only({ children: [CALM], looks: [["A", skill, "2026-03-01", "not met"]], skills: rows });

  test("one skill of hearing just past is group 2, and the clinician is asked to look into hearing first", () => {
    const row = past(skills("hearing", "speech"), "hears");
    expect(row.priority).toBe(2);
    expect(row.nextStep).toContain("Ask the child's clinician to look into hearing first.");
    expect(past(skills("hearing"), "draws").priority).toBe(3);
  });

  test("where no skill names a sense, those of the area sensory count; where one does, only those named", () => {
    expect(past(skills(null), "hears").priority).toBe(2);
    const named = skills(null).map((row) => (row[0] === "draws" ? [...row.slice(0, -1), "seeing"] : row));
    expect(past(named, "hears").priority).toBe(3);
    expect(past(named, "draws").priority).toBe(2);
  });
});

/** Born at 28 weeks 0 days, 84 days early. AAP (2004), Pediatrics 114:1362-1364: correction to 24 months. */
describe("past only because correcting stopped", () => {
  const skills = [
    SKILL_ROWS[0] as string[],
    ...["hops", "skips"].map((id) => [id, id, "gross motor", null, 24, "corrected", 0.99, null, null, "invented"]),
  ];
  /** Two years old on 1 August: 24 months from birth, 21 and a little from the due date. */
  const of = (ids: readonly string[], settings: Record<string, unknown> = {}) =>
    only({
      children: [["A", "2024-08-01", "28+0", "T1", "2026-01-01", null]],
      looks: ids.map((id) => ["A", id, "2026-09-01", "not met"]),
      skills,
      settings,
    });

  test("within three months it says so and counts for group 3 alone, two of them as well", () => {
    for (const ids of [["hops"], ["hops", "skips"]]) {
      expect(of(ids)).toMatchObject({ priority: 3, pastWindow: ids.length });
      expect(of(ids).reason).toMatch(/Past only because correcting age stopped on .*August/);
    }
  });

  test("three months after the stop it counts in full", () => {
    expect(of(["hops"], { asOf: "2026-10-31" })).toMatchObject({ priority: 3 });
    expect(of(["hops"], { asOf: "2026-11-01" })).toMatchObject({ priority: 2 });
  });
});

test("within a group: the senses, then areas, then skills, then how far past, then the code", () => {
  const skills = [
    [...(SKILL_ROWS[0] as string[]), "Sense"],
    ...["m1", "m2", "m3"].map((id) => [id, id, "gross motor", null, 6, "chronological", 0.99, null, null, "", null]),
    ["s1", "s1", "speech", null, 6, "chronological", 0.99, null, null, "", null],
    ["h1", "h1", "speech", null, 6, "chronological", 0.99, null, null, "", "hearing"],
  ];
  const looks = (id: string, ids: string[], date = "2026-03-01") => ids.map((skill) => [id, skill, date, "not met"]);
  const rows = caseloadOf({
    children: ["A", "B", "C", "D", "E", "F"].map((id) => [id, ...CALM.slice(1)]),
    looks: [
      ...looks("A", ["m1"]),
      ...looks("B", ["m1"]),
      ...looks("C", ["m1"], "2026-04-01"),
      ...looks("D", ["m1", "m2", "m3"]),
      ...looks("E", ["m1", "s1"]),
      ...looks("F", ["h1"]),
    ],
    skills,
  });
  expect(rows.map(({ child }) => child)).toEqual(["F", "E", "D", "C", "A", "B"]);
  expect(new Set(rows.map(({ priority }) => priority))).toEqual(new Set([2]));
});

/** Born at 28 weeks 0 days: the age jumps by 84 days. AAP (2004), Pediatrics 114:1362-1364: correction to 24 months. */
test("correcting stops on the second birthday, told in the 30 days before it and not on the day", () => {
  const bornOn = (birth: string) =>
    only({ children: [["A", birth, "28+0", "T1", "2026-09-01", null]], looks: [["A", "who8", "2026-09-29", "met"]] });
  expect(bornOn("2024-10-30")).toMatchObject({ correctionStops: "2026-10-30", priority: 5 });
  expect(bornOn("2024-10-30").reason).toContain("the age jumps by 84 days");
  expect(bornOn("2024-10-31").correctionStops).toBeNull();
  expect(bornOn("2024-09-30").correctionStops).toBeNull();
});

test("the most urgent come first, therapists by code, and every child in the program has one row", () => {
  const child = (id: string, therapist: string, left: string | null = null) => [
    id,
    "2025-08-15",
    null,
    therapist,
    "2026-09-01",
    left,
  ];
  const rows = caseloadOf({
    children: [child("E", "T2"), child("D", "T1"), child("C", "T1"), child("B", "T1"), child("A", "T1", "2026-09-30")],
    looks: [
      ["C", "who1", "2026-05-01", "met"],
      ["C", "who1", "2026-09-01", "lost"],
      ["B", "cdc1", "2026-02-20", "not met"],
      ["D", "cdc1", "2026-02-20", "not met"],
      ["D", "cdc2", "2026-02-20", "not met"],
    ],
  });
  expect(rows.map(({ therapist, child: id, priority }) => [therapist, id, priority])).toEqual([
    ["T1", "C", 1],
    ["T1", "D", 2],
    ["T1", "B", 3],
    ["T2", "E", 4],
  ]);
});

test("the therapist is the one of the enrolment in force on the day", () => {
  const rows = caseloadOf({
    children: [
      ["A", "2025-08-15", null, "T9", "2025-09-01", "2026-06-01"],
      ["A", "2025-08-15", null, "T3", "2026-06-01", null],
    ],
  });
  expect(rows.map(({ therapist }) => therapist)).toEqual(["T3"]);
});

describe("properties", () => {
  const result = fc.constantFrom("met", "not met", "emerging", "lost");
  const look = fc.tuple(fc.constantFrom("who1", "cdc1", "own1", "own2", "creeps", "strolls"), fc.nat(200), result);
  const child = fc.record({
    birthBack: fc.integer({ min: 20, max: 1200 }),
    weeks: fc.constantFrom(null, 26, 34, 40),
    therapist: fc.constantFrom("T1", "T2"),
    looks: fc.array(look, { maxLength: 8 }),
    sign: fc.boolean(),
  });
  const program = (children: readonly Drawn[]) => contextOf(rowsOf(children));

  test("another child changes nothing of a child's row, and the order of the rows of a sheet nothing at all", () => {
    fc.assert(
      fc.property(fc.array(child, { minLength: 1, maxLength: 5 }), child, (children, other) => {
        const alone = caseload(program(children)).rows;
        const together = caseload(program([...children, other])).rows;
        const newId = `C${children.length + 1}`;
        expect(together.filter((row) => row[1] !== newId)).toEqual(alone);
        const { children: rows, ...rest } = rowsOf(children);
        expect(caseload(contextOf({ ...rest, children: [...rows].reverse() })).rows).toEqual(alone);
      }),
      { numRuns: 40 },
    );
  });

  test("rows stand by therapist and priority, each child followed once, each line with its clinician", () => {
    fc.assert(
      fc.property(fc.array(child, { minLength: 1, maxLength: 6 }), (children) => {
        const rows = caseload(program(children)).rows;
        expect(rows.map((row) => row[1]).sort()).toEqual(children.map((_, n) => `C${n + 1}`));
        const order = rows.map((row) => `${row[0]} ${row[3]}`);
        expect(order).toEqual([...order].sort());
        for (const row of rows) {
          expect(row[5]).toMatch(/The child's clinician decides\.$/);
          expect(`${row[4]} ${row[5]}`).not.toMatch(JUDGING);
          if ((row[3] as number) <= 3) expect(row[5]).toMatch(/(talk with|tell) .*the child's clinician/i);
        }
      }),
    );
  });
});

/** Words that judge a child (METHOD.md, section 1), and those of a score card. */
const JUDGING = /delay|normal|\bfail|deficit|disorder|diagnos|score|\bred\b|amber|green/i;

interface Drawn {
  readonly birthBack: number;
  readonly weeks: number | null;
  readonly therapist: string;
  readonly looks: readonly (readonly [string, number, string])[];
  readonly sign: boolean;
}

function rowsOf(children: readonly Drawn[]): ProgramRows {
  const asOf = Date.parse(AS_OF);
  const back = (days: number) => new Date(asOf - days * 86_400_000).toISOString().slice(0, 10);
  return {
    children: children.map(({ birthBack, weeks, therapist }, n) => [
      `C${n + 1}`,
      back(birthBack),
      weeks,
      therapist,
      back(birthBack),
      null,
    ]),
    looks: children.flatMap(({ looks, birthBack }, n) =>
      looks.map(([skill, days, result]) => [`C${n + 1}`, skill, back(Math.min(days, birthBack)), result]),
    ),
    signs: children.flatMap(({ sign }, n) => (sign ? [[`C${n + 1}`, AS_OF, "very stiff", "present", null]] : [])),
  };
}

test("the table is internal, and without Signs it says that none is counted", () => {
  const table = caseload(contextOf({ children: [CALM] }));
  expect(table).toMatchObject({ id: "caseload", internal: true });
  expect(table.notes.join(" ")).toMatch(/no table Signs/);
  const rows: RowByKey[] = caseloadOf({ children: [CALM], signs: [["A", AS_OF, "stiff", "present", null]] });
  expect(rows[0]?.priority).toBe(1);
});
