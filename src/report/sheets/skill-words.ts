import type { Skill } from "../../records/records";

/** `8.2 to 17.6 months`, or `by 12.0 months` where the source gives no opening. */
export function windowInWords({ opensMonths, closesMonths }: Skill): string {
  if (closesMonths === null) return opensMonths === null ? "no window" : `from ${opensMonths.toFixed(1)} months`;
  const close = `${closesMonths.toFixed(1)} months`;
  return opensMonths === null ? `by ${close}` : `${opensMonths.toFixed(1)} to ${close}`;
}

/**
 * What the window's source says about its close. The CDC/AAP checklists place an item at the age by which 75% or more
 * of children would be expected to do it (Zubler et al., Pediatrics 2022;149(3):e2021052138).
 */
export function expectedInWords({ expectedShare }: Skill): string {
  if (expectedShare === null) return "its source gives no share";
  const inHundred = Math.round(expectedShare * 100);
  return `${inHundred}${expectedShare === 0.75 ? " or more" : ""} in 100 children by its close`;
}

export function basisInWords(skill: Skill): string {
  return `${skill.basis === "" ? "no basis given" : skill.basis}; ${expectedInWords(skill)}`;
}

/** The kind of source and what it says, short enough for a column in print; the sheet Method has the whole source. */
export function shortBasisInWords(skill: Skill): string {
  const { basis } = skill;
  const breaks = [...basis.matchAll(/ ?[,;:(/] /g)].map(({ index }) => index);
  const short =
    basis.length <= SHORT_BASIS
      ? basis
      : basis.slice(
          0,
          breaks.findLast((at) => at <= SHORT_BASIS),
        );
  return `${short === "" ? "no basis given" : short}; ${expectedInWords(skill)}`;
}

const SHORT_BASIS = 26;

/** Skills by id. */
export function skillsById(skills: readonly Skill[]): ReadonlyMap<string, Skill> {
  return new Map(skills.map((skill) => [skill.id, skill]));
}
