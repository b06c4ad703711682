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
