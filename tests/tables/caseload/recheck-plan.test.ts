import fc from "fast-check";
import { dayFromIso, isoOf } from "../../../src/age/day";
import { isNear } from "../../../src/tables/caseload/near";
import { planHorizon, therapistPlans } from "../../../src/tables/caseload/plan";
import type { PlanItem } from "../../../src/tables/caseload/plan-item";
import { LOOKS_PER_VISIT, plannedVisits, VISITS_IN_PLAN, visitsAsked } from "../../../src/tables/caseload/plan-visits";
import { recheckPlan } from "../../../src/tables/recheck-plan";
import { contextOf, type ProgramRows, rowsByKey } from "./program";

const plan = (program: ProgramRows) => rowsByKey(recheckPlan(contextOf(program)));
const child = (id: string, birth = "2025-08-15", therapist = "T1") => [id, birth, null, therapist, "2026-08-20", null];

test("safety first: signs and losses, then what is past its window, then results that differ, then unknowns", () => {
  const rows = plan({
    children: [child("A"), child("B"), child("C"), child("D")],
    looks: [
      ["A", "strolls", "2026-09-01", "not met"],
      ["B", "cdc1", "2026-09-01", "met", "T1"],
      ["B", "cdc1", "2026-09-01", "not met", "T2"],
      ["C", "who1", "2026-09-01", "not met"],
      ["C", "who2", "2026-09-01", "not met"],
      ["D", "cdc2", "2026-05-01", "met"],
      ["D", "cdc2", "2026-09-01", "emerging"],
    ],
    signs: [["D", "2026-09-02", "very stiff", "present", null]],
  });
  const first = (id: string) => rows.find((row) => row.child === id);
  expect(rows.map((row) => row.child).filter((id, at, all) => id !== all[at - 1])).toEqual(["D", "C", "B", "A"]);
  expect(rows.map(({ order }) => order)).toEqual(rows.map((_, at) => at + 1));
  expect(first("D")).toMatchObject({ skill: null, reason: expect.stringMatching(/very stiff.*clinician first/) });
  expect(rows[1]).toMatchObject({ child: "D", skill: "cdc2", reason: expect.stringMatching(/^Visit 1: met before/) });
  expect(
    rows
      .filter((row) => row.child === "C")
      .map(({ skill }) => skill)
      .slice(0, 2),
  ).toEqual(["who1", "who2"]);
  expect(first("B")).toMatchObject({
    skill: "cdc1",
    reason: expect.stringMatching(/different results on September 1/),
  });
  expect(first("A")?.reason).toMatch(/without another check the next report will not know|never checked/);
});

test("a skill that will still be current by the next report, one met, one replaced and one far off are left out", () => {
  // The next report is of 31 December: with 100 days to re-check, a look on or after 22 September still holds then.
  const settings = { recheck: 100 };
  const looks = [
    ["A", "strolls", "2026-09-22", "not met"],
    ["A", "who1", "2026-09-01", "met"],
  ];
  const skills = plan({ children: [child("A")], looks, settings }).map(({ skill }) => skill);
  expect(skills).not.toContain("strolls");
  expect(skills).not.toContain("who1");
  expect(skills).not.toContain("later");
  expect(plan({ children: [child("A")], looks }).map(({ skill }) => skill)).toContain("strolls");
  const walking = [["A", "strolls", "2026-09-22", "met"]];
  expect(plan({ children: [child("A")], looks: walking }).map(({ skill }) => skill)).not.toContain("creeps");
});

test("each therapist has a plan of so many visits and looks, numbered from one", () => {
  const children = Array.from({ length: 30 }, (_, n) => child(`C${n + 10}`, "2026-05-01", n < 20 ? "T1" : "T2"));
  const rows = plan({ children });
  for (const therapist of ["T1", "T2"]) {
    const own = rows.filter((row) => row.therapist === therapist);
    const visits = new Set(own.map(({ reason }) => /^Visit (\d+):/.exec(String(reason))?.[1]));
    expect(visits.size).toBe(VISITS_IN_PLAN);
    expect(own[0]?.order).toBe(1);
  }
});

test("a plan for fewer visits is the beginning of one for more", () => {
  const context = contextOf({ children: Array.from({ length: 9 }, (_, n) => child(`C${n}`, "2026-05-01")) });
  const [usual] = therapistPlans(context);
  const [short] = therapistPlans(context, 4);
  expect(usual?.visits).toHaveLength(VISITS_IN_PLAN);
  expect(short?.visits).toEqual(usual?.visits.slice(0, 4));
});

test("visits asked for: a whole number from 1 to 120, and the usual 12 where nothing is written", () => {
  expect(["", " 5 ", "120", "0", "121", "2.5", "-1", "a few"].map(visitsAsked)).toEqual([
    12,
    5,
    120,
    null,
    null,
    null,
    null,
    null,
  ]);
});

test.each([
  ["2026-09-30", "2026-12-31"],
  ["2026-08-15", "2026-09-30"],
  ["2026-12-31", "2027-03-31"],
  ["2026-12-30", "2026-12-31"],
  ["2024-01-01", "2024-03-31"],
])("a plan of %s serves the report of %s", (asOf, horizon) => {
  expect(isoOf(planHorizon(dayFromIso(asOf) as number))).toBe(horizon);
});

test("near: from the opening, or six months before a close without opening, to six months after it", () => {
  const at = (opensMonths: number | null, closesMonths: number | null) => (age: number) =>
    isNear({ opensMonths, closesMonths }, age);
  expect([4.9, 5, 15.9, 16].map(at(5, 10))).toEqual([false, true, true, false]);
  expect([5.9, 6, 17.9, 18].map(at(null, 12))).toEqual([false, true, true, false]);
  expect([4.9, 5, 60].map(at(5, null))).toEqual([false, true, true]);
  expect(at(null, null)(10)).toBe(false);
});

test("the items of a child come by tier, then by rank, in whatever order they were found", () => {
  const item = (why: PlanItem["why"], rank: number): PlanItem => ({ ...unknownOf(0), why, rank });
  const sorted = [item("sign", 1), item("sign", 2), item("past window", 0), item("not known", 5), item("not met", 3)];
  for (const order of [
    [4, 2, 0, 3, 1],
    [1, 0, 2, 3, 4],
    [3, 4, 1, 2, 0],
  ]) {
    expect(plannedVisits([order.map((at) => sorted[at]!)]).flatMap(({ items }) => items)).toEqual(sorted);
  }
});

test("visits come by tier, then by unknowns spared, then a first visit before a second, in whatever order children are", () => {
  const child = (n: number, why: PlanItem["why"], count: number, narrows = true) =>
    Array.from({ length: count }, (_, rank): PlanItem => ({ ...unknownOf(n), why, narrows, rank }));
  const children = [
    child(0, "not assessed", 2),
    child(1, "not assessed", 2 * LOOKS_PER_VISIT),
    child(2, "past window", 1, false),
    child(3, "not assessed", LOOKS_PER_VISIT),
    child(4, "sign", 1, false),
  ];
  expect(plannedVisits(children).map((visit) => visit.child)).toEqual([4, 2, 1, 3, 1, 0]);
});

/** No choice of so many visits spares the next report more unknowns: compared with the best of all ways to share them out. */
test("the plan spares the most unknowns that its visits can", () => {
  fc.assert(
    fc.property(fc.array(fc.nat(40), { minLength: 1, maxLength: 8 }), (unknowns) => {
      const visits = plannedVisits(unknowns.map((count, n) => Array.from({ length: count }, () => unknownOf(n))));
      const spared = visits.reduce((sum, { items }) => sum + items.length, 0);
      expect(spared).toBe(bestOf(unknowns, VISITS_IN_PLAN));
      expect(visits.length).toBeLessThanOrEqual(VISITS_IN_PLAN);
    }),
  );
});

/** Most unknowns that `visits` visits can look at, by trying every number of visits for each child in turn. */
function bestOf(unknowns: readonly number[], visits: number): number {
  const best = unknowns.reduce(
    (room, count) =>
      room.map((_, left) =>
        Math.max(
          ...Array.from(
            { length: left + 1 },
            (_unused, own) => (room[left - own] as number) + Math.min(count, own * LOOKS_PER_VISIT),
          ),
        ),
      ),
    Array.from({ length: visits + 1 }, () => 0),
  );
  return best[visits] as number;
}

function unknownOf(n: number): PlanItem {
  return { child: n, skill: 0, why: "not assessed", sign: null, lastLook: null, narrows: true, rank: 0 };
}

test("nothing is planned for months before the due date", () => {
  // No opening is published: from six months before the close at 2 months, which would be an age below zero.
  const skills = [
    ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share", "Follows", "Try together", "Basis"],
    ["head", "Lifts head", "gross motor", null, 2, null, 0.75, null, null, "invented"],
  ];
  // Born on September 20 at 25 weeks 0 days: due 105 days later, on January 3, after the next report of December 31.
  const planned = (birth: string, gestation: string | null) =>
    plan({ children: [["A", birth, gestation, "T1", birth, null]], skills }).map(({ skill }) => skill);
  expect(planned("2026-09-20", "25+0")).toEqual([]);
  expect(planned("2026-09-20", "26+0")).toEqual(["head"]);
  expect(planned("2026-09-20", null)).toEqual(["head"]);
});
