import fc from "fast-check";
import { caseload } from "../../../src/tables/caseload";
import { pastWindowWeight } from "../../../src/tables/caseload/past-weight";
import { AS_OF, caseloadOf, contextOf, only, type ProgramRows, type RowByKey } from "./program";

/** Thirteen and a half months old on the as-of date: no routine visit, no transition, no opening is near. */
const CALM = ["A", "2025-08-15", null, "T1", "2025-09-01", null];
const calm = (looks: unknown[][] = [], more: Partial<ProgramRows> = {}) => only({ children: [CALM], looks, ...more });
const notMet = (skills: readonly string[], date = "2026-09-01") => skills.map((skill) => ["A", skill, date, "not met"]);

describe("priority and reason, by hand", () => {
  test("5: nothing stands out", () => {
    expect(calm()).toMatchObject({ priority: 5, lost: 0, signsOpen: 0, pastWindow: 0, outOfDate: 0, visitDue: null });
    expect(calm().reason).toBe("Nothing stands out in the records, and nothing is due.");
  });

  test("1: a loss as recorded, and a loss that one look suggests, are worded apart", () => {
    const lost = calm([
      ["A", "who1", "2026-05-01", "met"],
      ["A", "who1", "2026-09-01", "lost"],
    ]);
    expect(lost).toMatchObject({ priority: 1, lost: 1 });
    expect(lost.reason).toBe("Lost, as recorded: Skill who 1 (September 1, 2026).");
    expect(lost.nextStep).toMatch(/child's clinician about the loss now; do not wait/);
    const toConfirm = calm([
      ["A", "who1", "2026-05-01", "met"],
      ["A", "who1", "2026-09-01", "not met"],
    ]);
    expect(toConfirm).toMatchObject({ priority: 1, lost: 1 });
    expect(toConfirm.reason).toBe("Lost, to confirm: Skill who 1 (September 1, 2026).");
    expect(toConfirm.nextStep).toMatch(/confirm, and talk with the child's clinician about it now/);
  });

  test("1: a present sign without a follow-up; one followed up, absent or not looked for is none", () => {
    const sign = (seen: string, action: string | null) => ({
      signs: [["A", "2026-09-02", "very stiff", seen, action]],
    });
    expect(calm([], sign("present", null))).toMatchObject({ priority: 1, signsOpen: 1 });
    expect(calm([], sign("present", null)).reason).toBe(
      "Warning sign without follow-up: very stiff (September 2, 2026).",
    );
    expect(calm([], sign("present", "2026-09-09"))).toMatchObject({ priority: 5, signsOpen: 0 });
    expect(calm([], sign("absent", null))).toMatchObject({ priority: 5, signsOpen: 0 });
    expect(calm([], sign("not looked for", null))).toMatchObject({ priority: 5, signsOpen: 0 });
  });

  /** 2 x 1; 8 x 0.25; 4 x 0.5; 1 + 2 x 0.5; 1 + 4 x 0.25; each 2 in weight, and one skill less is below. */
  test.each([
    [["who1", "who2"]],
    [["cdc1", "cdc2", "cdc3", "cdc4", "cdc5", "cdc6", "cdc7", "cdc8"]],
    [["own1", "own2", "own3", "own4"]],
    [["own1", "who1", "own2"]],
    [["cdc1", "who1", "cdc2", "cdc3", "cdc4"]],
  ])("2: %j past their windows weigh two, and are several; without the first they are not", (skills) => {
    expect(calm(notMet(skills))).toMatchObject({ priority: 2, pastWindow: skills.length });
    expect(calm(notMet(skills)).nextStep).toMatch(/talk with the child's clinician about all of them/);
    const fewer = calm(notMet(skills.slice(1)));
    expect(fewer).toMatchObject({ priority: 5, pastWindow: skills.length - 1 });
    expect(fewer.reason).toContain("(not several by weight)");
  });

  test("2: the skills past their windows are counted by area, and the age of a look takes none of them away", () => {
    const row = calm(notMet(["who1", "who2", "who3"], "2026-02-01"));
    expect(row).toMatchObject({ priority: 2, pastWindow: 3, outOfDate: 3 });
    expect(row.reason).toContain("Past window: gross motor 2 and speech 1 (several by weight).");
    expect(row.reason).toContain("Not met over 90 days ago: Skill who 1; Skill who 2; Skill who 3.");
  });

  test("3: out of date only past 90 days", () => {
    expect(calm(notMet(["cdc1"], "2026-07-02"))).toMatchObject({ priority: 5, outOfDate: 0 });
    expect(calm(notMet(["cdc1"], "2026-07-01"))).toMatchObject({ priority: 3, outOfDate: 1 });
  });

  test("3: observers who disagree; after a met, that day counts as a loss to confirm", () => {
    const twice = [
      ["A", "cdc1", "2026-09-01", "met", "T1"],
      ["A", "cdc1", "2026-09-01", "not met", "T2"],
    ];
    expect(calm(twice)).toMatchObject({ priority: 3, disagreements: 1, lost: 0 });
    expect(calm(twice).nextStep).toMatch(/look again together/);
    expect(calm([["A", "cdc1", "2026-05-01", "met", "T1"], ...twice])).toMatchObject({ priority: 1, lost: 1 });
  });

  test("4: a window that opens within 30 days of the as-of date, not one that is open already or met", () => {
    const bornOn = (birth: string) => only({ children: [["A", birth, null, "T1", "2025-09-01", null]] });
    expect(bornOn("2025-02-28")).toMatchObject({ openingSoon: 1, priority: 4 });
    // Opens on 30 October, 30 days on; on 31 October, 31 days on; on the as-of date itself.
    expect(bornOn("2025-03-01")).toMatchObject({ openingSoon: 0 });
    expect(bornOn("2025-01-30")).toMatchObject({ openingSoon: 0 });
    const met = only({
      children: [["A", "2025-02-28", null, "T1", "2025-09-01", null]],
      looks: [["A", "later", "2026-09-01", "met"]],
    });
    expect(met).toMatchObject({ openingSoon: 0 });
  });

  test("a skill that a later one has replaced is neither past its window nor out of date", () => {
    const creeping = [["A", "creeps", "2026-03-01", "not met"]];
    expect(calm(creeping)).toMatchObject({ pastWindow: 1, outOfDate: 1, priority: 3 });
    expect(calm([...creeping, ["A", "strolls", "2026-08-01", "met"]])).toMatchObject({
      pastWindow: 0,
      outOfDate: 0,
      priority: 5,
    });
  });
});

test("weights: 1 at 0.99, 0.25 at 0.75, 0.5 without a share, in proportion between, no further outside", () => {
  const weights = [0.99, 0.75, null, 0.87, 1, 0.5].map((expectedShare) => pastWindowWeight({ expectedShare }));
  expect(weights).toEqual([1, 0.25, 0.5, expect.closeTo(0.625, 12), 1, 0.25]);
});

/** Born at 28 weeks 0 days: the age jumps by 84 days. AAP (2004), Pediatrics 114:1362-1364: correction to 24 months. */
test("correcting stops on the second birthday, told in the 30 days before it and not on the day", () => {
  const bornOn = (birth: string) => only({ children: [["A", birth, "28+0", "T1", "2025-09-01", null]] });
  expect(bornOn("2024-10-30")).toMatchObject({ correctionStops: "2026-10-30", priority: 4 });
  expect(bornOn("2024-10-30").reason).toContain("the age jumps by 84 days");
  expect(bornOn("2024-10-31").correctionStops).toBeNull();
  expect(bornOn("2024-09-30").correctionStops).toBeNull();
});

test("the most urgent come first, therapists by code, and every child followed stands once", () => {
  const child = (id: string, therapist: string, left: string | null = null) => [
    id,
    "2025-08-15",
    null,
    therapist,
    "2025-09-01",
    left,
  ];
  const rows = caseloadOf({
    children: [child("E", "T2"), child("D", "T1"), child("C", "T1"), child("B", "T1"), child("A", "T1", "2026-09-30")],
    looks: [
      ["C", "who1", "2026-05-01", "met"],
      ["C", "who1", "2026-09-01", "lost"],
      ["B", "cdc1", "2026-01-01", "not met"],
      ["D", "cdc1", "2026-01-01", "not met"],
      ["D", "cdc2", "2026-01-01", "not met"],
    ],
  });
  expect(rows.map(({ therapist, child: id, priority }) => [therapist, id, priority])).toEqual([
    ["T1", "C", 1],
    ["T1", "D", 3],
    ["T1", "B", 3],
    ["T2", "E", 5],
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
          if (row[3] === 1) expect(row[5]).toMatch(/talk with .*the child's clinician/i);
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
