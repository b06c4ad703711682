import { byUrgency } from "../../../src/tables/caseload/priority";
import type { Concerns } from "../../../src/tables/caseload/concerns";
import { concernsOfFollowed } from "../../../src/tables/caseload/followed";
import { nextStepInWords } from "../../../src/tables/caseload/next-step";
import { reasonInWords } from "../../../src/tables/caseload/reason";
import { contextOf } from "./program";

/**
 * Every child with one to three skills, each last checked on one of these days with one of these results or never, at each of
 * these ages. What must hold is worked out here from the dates alone.
 */
const SKILLS = [
  { id: "a", share: 0.99, closes: 6, follows: null, sense: null, area: "gross motor" },
  { id: "b", share: 0.75, closes: 12, follows: "a", sense: null, area: "gross motor" },
  { id: "c", share: null, closes: 18, follows: null, sense: "hearing", area: "speech" },
] as const;
/** Best first. */
const RESULTS = ["met", "emerging", "not met", "lost"] as const;
const DAYS_AGO = [8, 60, 200];
/** Birth dates on the 10th of a month, so that a month's birthday is the 10th. */
const BIRTHS = ["2026-07-10", "2026-03-10", "2025-12-10", "2025-08-10", "2025-01-10", "2023-12-10"];
const AS_OF = "2026-09-30";

interface Check {
  readonly result: (typeof RESULTS)[number];
  readonly ago: number;
}
interface Drawn {
  readonly birth: string;
  readonly checks: readonly (Check | null)[];
}

const CHECKS: readonly (Check | null)[] = [
  null,
  ...DAYS_AGO.flatMap((ago) => RESULTS.map((result) => ({ result, ago }))),
];
const children: readonly Drawn[] = BIRTHS.flatMap((birth) =>
  CHECKS.flatMap((a) => CHECKS.flatMap((b) => CHECKS.map((c) => ({ birth, checks: [a, b, c] })))),
).filter(({ birth, checks }) => checks.every((check) => check === null || back(check.ago) >= birth));

const nameOf = ({ birth, checks }: Drawn): string =>
  [birth, ...checks.map((check) => (check ? `${check.result} ${check.ago}` : "never"))].join("|");

const program = {
  children: children.map((child) => [nameOf(child), child.birth, null, "T1", child.birth, null]),
  looks: children.flatMap((child) =>
    child.checks.flatMap((check, skill) =>
      check ? [[nameOf(child), SKILLS[skill]!.id, back(check.ago), check.result]] : [],
    ),
  ),
  skills: [
    ["Skill", "Label", "Area", "Closes", "Age basis", "Expected share", "Follows", "Sense", "Basis"],
    ...SKILLS.map(({ id, share, closes, follows, sense, area }) => [
      id,
      id,
      area,
      closes,
      "chronological",
      share,
      follows,
      sense,
      "invented",
    ]),
  ],
};

const context = contextOf(program);
const concernsAt = (asOf: string): Map<string, Concerns> => {
  const then = asOf === AS_OF ? context : contextOf({ ...program, settings: { asOf } });
  return new Map(concernsOfFollowed(then).map((each) => [then.cohort.ids[each.child] as string, each]));
};
const now = concernsAt(AS_OF);

test("nobody with anything lost, past, due unchecked, never or long not checked is in the last group", () => {
  expect(children.length).toBeGreaterThan(5_000);
  const wrong = children.filter((child) => now.get(nameOf(child))!.priority === 6 && isAnything(child, AS_OF));
  expect(wrong.map(nameOf)).toEqual([]);
  expect([...now.values()].filter(({ priority }) => priority === 6).length).toBeGreaterThan(50);
});

test("nobody with anything past is told that all is well, and each next step names the clinician", () => {
  for (const concerns of now.values()) {
    const said = `${reasonInWords(context, concerns)} ${nextStepInWords(context, concerns)}`;
    expect(said).toMatch(/child's clinician/);
    expect(said).not.toMatch(/as planned|in good time|nothing stands out|all is well|on track/i);
    if (concerns.past.length > 0) expect(concerns.priority).toBeLessThanOrEqual(3);
    if (concerns.past.length > 0) expect(said).toMatch(/talk with .*child's clinician/i);
  }
});

test("a worse result never lowers the urgency, neither the group nor the order within it", () => {
  const wrong = children.flatMap((child) =>
    child.checks.flatMap((check, skill) => {
      const worse = check && RESULTS[RESULTS.indexOf(check.result) + 1];
      if (!check || !worse) return [];
      const checks = child.checks.map((each, at) => (at === skill ? { ...check, result: worse } : each));
      const [better, worst] = [now.get(nameOf(child))!, now.get(nameOf({ ...child, checks }))!];
      return byUrgency(worst, better) > 0 ? [`${nameOf(child)} -> ${worse} of ${SKILLS[skill]!.id}`] : [];
    }),
  );
  expect(wrong).toEqual([]);
});

test.each(["2026-10-10", "2027-01-31", "2027-06-30"])(
  "for a child with something past, the passing of time to %s never lowers the urgency",
  (later) => {
    const then = concernsAt(later);
    const wrong = [...now].filter(
      ([name, concerns]) => concerns.past.length > 0 && then.get(name)!.priority > concerns.priority,
    );
    expect(wrong.map(([name]) => name)).toEqual([]);
  },
);

/** From the dates alone: what the last group may not hold. */
function isAnything({ birth, checks }: Drawn, asOf: string): boolean {
  const made = checks.filter((check) => check !== null);
  if (made.length === 0 || Math.min(...made.map(({ ago }) => ago)) > 90) return true;
  const walks = checks[1]?.result === "met";
  return checks.some((check, skill) => {
    if (skill === 0 && walks) return false;
    if (check?.result === "lost") return true;
    const closed = asOf >= closeOf(birth, SKILLS[skill]!.closes);
    return closed && check?.result !== "met";
  });
}

/** The day of a month's birthday: the 10th of the month so many months on. */
function closeOf(birth: string, months: number): string {
  const [year = 0, month = 0] = birth.split("-").map(Number);
  const at = year * 12 + month - 1 + months;
  return `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, "0")}-10`;
}

function back(days: number): string {
  return new Date(Date.parse(AS_OF) - days * 86_400_000).toISOString().slice(0, 10);
}
