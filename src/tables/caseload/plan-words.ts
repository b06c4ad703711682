import { dayInWords } from "../../words/dates";
import type { PlanItem } from "./plan-item";

/** Why this is to be looked at, as a sentence without its full stop. */
export function planReasonInWords(item: PlanItem): string {
  const on = item.lastLook === null ? "" : ` on ${dayInWords(item.lastLook)}`;
  switch (item.why) {
    case "sign":
      return `warning sign present${on}, no follow-up noted (${item.sign?.sign ?? ""}): talk with the child's clinician first`;
    case "lost":
      return `recorded as lost${on}: talk with the child's clinician, and check whether it is there`;
    case "to confirm":
      return `met before, not met${on}: confirm, and talk with the child's clinician`;
    case "past window":
      return `not met${on}, past its window: check again, and talk with the child's clinician`;
    case "not known":
      return item.lastLook === null
        ? "never checked, and its window has closed"
        : `not met${on}, and its window has closed since`;
    case "different results":
      return `different results${on}: check together`;
    case "not met":
      return `not met${on}; without another check the next report will not know`;
    case "not assessed":
      return "never checked, and near its window";
  }
}
