import { COGNITIVE } from "./skills/cognitive";
import { FINE_MOTOR } from "./skills/fine-motor";
import { GROSS_MOTOR } from "./skills/gross-motor";
import { SENSORY } from "./skills/sensory";
import { SOCIAL_EMOTIONAL } from "./skills/social-emotional";
import type { SampleSkill } from "./skills/sources";
import { SPEECH } from "./skills/speech";

export type { SampleArea, SampleSkill } from "./skills/sources";

/**
 * The skill list of the invented Alder Fork program. Labels and ideas are in our own words; each window names its
 * basis, and every one of them can be edited in the workbook.
 */
export const SKILLS: readonly SampleSkill[] = [
  ...GROSS_MOTOR,
  ...FINE_MOTOR,
  ...SOCIAL_EMOTIONAL,
  ...COGNITIVE,
  ...SPEECH,
  ...SENSORY,
];

/** @throws {RangeError} when no skill has the id */
export function skillIndex(id: string): number {
  const index = SKILLS.findIndex((skill) => skill.id === id);
  if (index < 0) throw new RangeError(`skillIndex: there is no skill ${id}`);
  return index;
}

/** The skills that come first in every child, by index: the one that a skill follows, and those it comes after. */
export const STEPS_BEFORE: readonly (readonly number[])[] = SKILLS.map(({ follows, after }) =>
  [...(follows === "" ? [] : [follows]), ...after].map(skillIndex),
);

/** Every skill after those that lead to it. */
export const IN_ORDER: readonly number[] = inOrder();

function inOrder(): number[] {
  const order = new Set<number>();
  const add = (skill: number): void => {
    STEPS_BEFORE[skill]?.forEach(add);
    order.add(skill);
  };
  SKILLS.forEach((_, skill) => add(skill));
  return [...order];
}
