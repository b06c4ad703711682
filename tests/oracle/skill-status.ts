import { ageMonths, decimal, isAtLeast, type Months } from "./ages";
import { attainmentOf, boxAt, looksOf, stateAt, type Attainment } from "./attainment";
import type { Entry } from "./groups";
import type { OracleInput, OracleRow, OracleSettings, SkillRow } from "./input";

/** METHOD.md, section 5: one row a followed child and skill. */
export function skillStatus(input: OracleInput, followed: readonly Entry[]): OracleRow[] {
  return followed.flatMap((entry) => input.skills.map((skill) => statusOf(input, entry, skill)));
}

function statusOf(input: OracleInput, { person, day }: Entry, skill: SkillRow): OracleRow {
  const looks = looksOf(person, skill.skill, day);
  const attainment = attainmentOf(looks, person.birth);
  const box = boxAt(input, person, skill, day);
  const timed = box === "had at first look" || box === "gained here" ? attainment : null;
  const under = (settings: OracleSettings): { window: string | null; timing: string | null } => {
    const age = (on: string): Months => ageMonths(person, skill.ageBasis, settings, on);
    return { window: windowOf(age(day), skill), timing: timed === null ? null : timingOf(age, timed, skill) };
  };
  const now = under(input.settings);
  const stillCorrected = under({ ...input.settings, untilMonths: "always" });
  const stopped = now.window !== stillCorrected.window || now.timing !== stillCorrected.timing;
  return {
    child: person.id,
    skill: skill.skill,
    area: skill.area,
    ageMonths: decimal(ageMonths(person, skill.ageBasis, input.settings, day)),
    window: now.window,
    state: stateAt(input, person, skill, day),
    box,
    timing: now.timing,
    metAfter: attainment?.after ?? null,
    metBy: attainment?.by ?? null,
    lastLook: looks[looks.length - 1]?.date ?? null,
    reason: stopped ? "correction stopped" : null,
  };
}

/** An edge that no source gives is never reached from either side; a skill with neither edge has no window. */
function windowOf(age: Months, { opens, closes }: SkillRow): string | null {
  if (opens === null && closes === null) return null;
  if (closes !== null && isAtLeast(age, closes)) return "past window";
  return opens === null || isAtLeast(age, opens) ? "in window" : "before window";
}

function timingOf(age: (day: string) => Months, met: Attainment, { opens, closes }: SkillRow): string | null {
  if (opens === null && closes === null) return null;
  if (opens !== null && !isAtLeast(age(met.by), opens)) return "early";
  if (closes !== null && isAtLeast(age(met.after), closes)) return "late";
  const afterOpening = opens === null || isAtLeast(age(met.after), opens);
  const beforeClosing = closes === null || !isAtLeast(age(met.by), closes);
  return afterOpening && beforeClosing ? "in window" : "not known";
}
