import type { PlanItem } from "../../tables/caseload/plan-item";
import type { PlannedVisit } from "../../tables/caseload/plan-visits";
import type { TableContext } from "../../tables/context";
import { labelOf } from "./page-words";

export interface VisitLine {
  readonly child: string;
  readonly looks: string;
}

const MOST_LOOKS = 4;

/** The visits of a plan, a line each. */
export function visitLines(context: TableContext, visits: readonly PlannedVisit[]): VisitLine[] {
  return visits.map(({ child, items }) => {
    const more = items.length - MOST_LOOKS;
    const looks = items.slice(0, MOST_LOOKS).map((item) => lookInWords(context, item));
    return {
      child: context.cohort.ids[child] as string,
      looks: `${looks.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`,
    };
  });
}

function lookInWords({ cohort }: TableContext, { skill, why, sign }: PlanItem): string {
  if (why === "sign") return `sign without follow-up: ${sign?.sign ?? ""} (talk with the child's clinician first)`;
  const named = skill === null ? undefined : cohort.skills[skill];
  return `${named ? labelOf(named) : ""} (${why})`;
}
