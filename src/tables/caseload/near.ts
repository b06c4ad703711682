import type { WindowEdges } from "../../cohort/window";

/** Months before a close from which a skill without a published opening is looked for; and after a close, for how long. */
const NEAR_MONTHS = 6;

/**
 * True where a skill is worth looking for, or trying, at an age: from its window's opening until six months after its
 * close. Where no opening is published none is made up: such a skill is near from six months before its close, the widest
 * step between the ages of the CDC/AAP checklists (Zubler et al., Pediatrics 2022;149(3):e2021052138). Never
 * before the due date. Our choice, used to choose what is named first and for no figure.
 */
export function isNear({ opensMonths, closesMonths }: WindowEdges, ageMonths: number): boolean {
  if (ageMonths < 0) return false;
  if (closesMonths === null) return opensMonths !== null && ageMonths >= opensMonths;
  const from = opensMonths ?? closesMonths - NEAR_MONTHS;
  return ageMonths >= from && ageMonths < closesMonths + NEAR_MONTHS;
}
