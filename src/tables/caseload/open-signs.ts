import type { Day } from "../../age/day";
import { NO_DAY, type Signs } from "../../records/records";

export interface SeenSign {
  readonly sign: string;
  readonly day: Day;
  /** Day of the follow-up; null where none is noted by the day asked for. */
  readonly action: Day | null;
}

/** Warning signs marked present up to a day, by child, in order of day. */
export function presentSigns(signs: Signs | null, upTo: Day): ReadonlyMap<number, readonly SeenSign[]> {
  const byChild = new Map<number, SeenSign[]>();
  signs?.child.forEach((child, row) => {
    const day = signs.day[row] as number;
    if (signs.seen[row] !== "present" || day > upTo) return;
    const noted = signs.action[row] as number;
    const action = noted === NO_DAY || noted > upTo ? null : noted;
    const seen = byChild.get(child) ?? [];
    byChild.set(child, seen);
    seen.push({ sign: signs.sign[row] as string, day, action });
  });
  for (const seen of byChild.values()) seen.sort((a, b) => a.day - b.day);
  return byChild;
}
