import type { Skill } from "../../records/records";

/**
 * True for each skill that shows hearing or seeing: those that name a `Sense` or, where no skill does, those of the area
 * sensory (METHOD.md, section 6).
 */
export function sensesOf(skills: readonly Skill[]): boolean[] {
  const isNamed = skills.some(({ sense }) => sense !== null);
  return skills.map(({ sense, area }) => (isNamed ? sense !== null : area === "sensory"));
}
