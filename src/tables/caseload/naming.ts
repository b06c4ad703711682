import type { Skill } from "../../records/records";
import type { TableContext } from "../context";

/** The most skills that a line names. */
const MOST_NAMED = 3;

export function labelOf({ cohort }: TableContext, skill: number): string {
  const { label, id } = cohort.skills[skill] as Skill;
  return label === "" ? id : label;
}

/** `Waves goodbye; Claps hands; Runs; and 2 more` */
export function named(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return names.slice(0, MOST_NAMED).join("; ") + (more > 0 ? `; and ${more} more` : "");
}
