/** A program's workbook as it was, and as it is some time later: rows added, changed and gone, other settings, other skills. */
import * as fc from "fast-check";
import { addDays } from "./calendar";
import type { ChildRow, ObservationRow, OracleInput, Result, SkillRow } from "./input";
import { cohortArbitrary } from "./random-cohort";

export interface Pair {
  readonly earlier: OracleInput;
  readonly later: OracleInput;
}

const RESULTS: readonly Result[] = ["not met", "emerging", "met", "lost"];
const KINDS = [
  "add check",
  "add check",
  "change result",
  "move check",
  "remove check",
  "add child",
  "remove child",
  "move birth",
  "change gestation",
  "change site",
  "blank site",
  "move enrolled",
  "set left",
  "clear left",
  "add enrolment",
] as const;

interface Edit {
  readonly kind: (typeof KINDS)[number];
  readonly row: number;
  readonly other: number;
  readonly days: number;
}

const edits = fc.array(
  fc.record<Edit>({
    kind: fc.constantFrom(...KINDS),
    row: fc.nat(40),
    other: fc.nat(40),
    days: fc.constantFrom(-200, -95, -30, -1, 0, 1, 20, 60, 91, 120),
  }),
  { maxLength: 8 },
);

export function pairArbitrary(): fc.Arbitrary<Pair> {
  return fc
    .record({
      start: cohortArbitrary(),
      edits,
      days: fc.constantFrom(0, 0, 1, 30, 92, 200),
      recheckDays: fc.constantFrom(null, null, 60, 30),
      by: fc.constantFrom(null, null, [], ["Site"], ["Therapist"]),
      untilMonths: fc.constantFrom(null, null, 12 as const, "always" as const),
      edges: fc.constantFrom(null, null, [0, 3, 6, 12, 24]),
      skills: fc.constantFrom("same", "same", "one gone", "one more", "other basis", "other area"),
    })
    .map(({ start, edits: list, days, skills, ...changed }) => {
      const rows = list.reduce(edited, start);
      const given = Object.fromEntries(Object.entries(changed).filter(([, value]) => value !== null));
      const settings = { ...start.settings, from: null, asOf: addDays(start.settings.asOf, days), ...given };
      const earlier = { ...start, settings: { ...start.settings, from: null } };
      return { earlier, later: { ...rows, skills: otherSkills(start.skills, skills), settings } };
    });
}

function otherSkills(all: readonly SkillRow[], how: string): readonly SkillRow[] {
  const [first, ...others] = all as [SkillRow, ...SkillRow[]];
  if (how === "one gone" && others.length > 0) return others.map((each) => ({ ...each, follows: null }));
  if (how === "one more") return [...all, { ...first, skill: "later-skill", label: "later-skill", follows: null }];
  if (how === "other area") return [{ ...first, area: first.area === "speech" ? "sensory" : "speech" }, ...others];
  if (how !== "other basis") return all;
  return [{ ...first, ageBasis: first.ageBasis === "chronological" ? "corrected" : "chronological" }, ...others];
}

function edited(input: OracleInput, { kind, row, other, days }: Edit): OracleInput {
  const at = row % Math.max(1, input.observations.length);
  const check = input.observations[at];
  const own = row % input.children.length;
  const child = input.children[own] as ChildRow;
  const withCheck = (change: (each: ObservationRow) => readonly ObservationRow[]) =>
    check === undefined ? input : { ...input, observations: input.observations.toSpliced(at, 1, ...change(check)) };
  const withChild = (change: Partial<ChildRow>) => ({
    ...input,
    children: input.children.toSpliced(own, 1, { ...child, ...change }).filter(once),
  });
  switch (kind) {
    case "add check": {
      const skill = input.skills[other % input.skills.length]?.skill ?? "";
      const added = {
        child: child.child,
        skill,
        date: addDays(input.settings.asOf, days),
        result: RESULTS[other % 4] as Result,
      };
      return { ...input, observations: [...input.observations, added] };
    }
    case "change result":
      return withCheck((each) => [{ ...each, result: RESULTS[other % 4] as Result }]);
    case "move check":
      return withCheck((each) => [{ ...each, date: addDays(each.date, days) }]);
    case "remove check":
      return withCheck(() => []);
    case "add child":
      return { ...input, children: [...input.children, { ...child, child: `N${other}` }].filter(once) };
    case "remove child":
      return input.children.length < 2 ? input : { ...input, children: input.children.toSpliced(own, 1) };
    case "move birth":
      return withChild({ birth: addDays(child.birth, -Math.abs(days)) });
    case "change gestation":
      return withChild({ gestation: [null, 210, 196, 273][other % 4] as number | null });
    case "change site":
      return withChild({ site: ["North", "South", "Brook"][other % 3] as string });
    case "blank site":
      return withChild({ site: "" });
    case "move enrolled":
      return withChild(moved(child, days));
    case "set left":
      return withChild({
        left: laterOf(addDays(input.settings.asOf, days), addDays(child.enrolled ?? child.birth, 1)),
      });
    case "clear left":
      return withChild({ left: null });
    case "add enrolment":
      return {
        ...input,
        children: [...input.children, { ...child, enrolled: addDays(input.settings.asOf, days), left: null }].filter(
          once,
        ),
      };
  }
}

/** Never to before birth. */
function moved({ birth, enrolled, left }: ChildRow, days: number): Partial<ChildRow> {
  const day = laterOf(addDays(enrolled ?? birth, days), birth);
  return {
    enrolled: enrolled === null ? null : day,
    left: left === null ? null : laterOf(addDays(left, days), addDays(day, 1)),
  };
}

/** A row of Children that ends before it begins is not used. */
function laterOf(a: string, b: string): string {
  return a > b ? a : b;
}

/** Two rows of one child and day of enrollment are an overlap that has its own tests. */
function once({ child, enrolled }: ChildRow, at: number, all: readonly ChildRow[]): boolean {
  return all.findIndex((each) => each.child === child && each.enrolled === enrolled) === at;
}
