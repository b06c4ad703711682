import type { Concerns, Priority } from "./concerns";
import { areSeveral } from "./past-weight";

/** What each priority stands for (METHOD.md, section 6). */
export const PRIORITY_WORDS: Readonly<Record<Priority, string>> = {
  1: "A loss, or a sign without follow-up",
  2: "Several skills past their windows",
  3: "To be looked at again",
  4: "Something due or opening",
  5: "Nothing stands out",
};

export function priorityOf(facts: Omit<Concerns, "priority">): Priority {
  if (facts.lost.length + facts.toConfirm.length + facts.openSigns.length > 0) return 1;
  if (areSeveral(facts.pastWeight)) return 2;
  if (facts.outOfDate.length + facts.disagreed.length > 0) return 3;
  return isSomethingDue(facts) ? 4 : 5;
}

function isSomethingDue(facts: Omit<Concerns, "priority">): boolean {
  const dated = [facts.correctionStops, facts.visit, facts.transition];
  return facts.opening.length > 0 || dated.some((each) => each !== null);
}
