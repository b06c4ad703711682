/** Where an age stands against the window of a skill. */
export type WindowStatus = "before window" | "in window" | "past window";

/** Whether a skill that was met came before its window opened, in it, or after it closed. */
export type Timing = "early" | "in window" | "late" | "not known";

export interface WindowEdges {
  /** Null where none is published: then nothing is before the window, or early. */
  readonly opensMonths: number | null;
  readonly closesMonths: number | null;
}

/** Null where the skill has no window at all. Limits: `opens <= age < closes` is in the window. */
export function windowStatus(ageMonths: number, window: WindowEdges): WindowStatus | null {
  if (hasNoWindow(window)) return null;
  if (ageMonths < opensOf(window)) return "before window";
  return ageMonths < closesOf(window) ? "in window" : "past window";
}

/**
 * @param withoutMonths - age at the last look without the skill, or at birth where it was there at the first look
 * @param metMonths - age at the look that first saw it
 */
export function timingOf(withoutMonths: number, metMonths: number, window: WindowEdges): Timing | null {
  if (hasNoWindow(window)) return null;
  if (metMonths < opensOf(window)) return "early";
  if (withoutMonths >= closesOf(window)) return "late";
  return withoutMonths >= opensOf(window) && metMonths < closesOf(window) ? "in window" : "not known";
}

function hasNoWindow(window: WindowEdges): boolean {
  return window.opensMonths === null && window.closesMonths === null;
}

function opensOf(window: WindowEdges): number {
  return window.opensMonths ?? -Infinity;
}

function closesOf(window: WindowEdges): number {
  return window.closesMonths ?? Infinity;
}
