import type { AgeClock } from "../../../src/age/correction";
import { dayInWords } from "../../../src/words/dates";
import { childrenOf } from "../../../src/report/pages/make-page";
import { bothAges, labelOf } from "../../../src/report/pages/page-words";
import { caseloadTitle } from "../../../src/report/pages/therapist-page";
import { caseloadNotes } from "../../../src/tables/caseload";
import type { Concerns } from "../../../src/tables/caseload/concerns";
import { concernsOfFollowed } from "../../../src/tables/caseload/followed";
import { nextStepInWords } from "../../../src/tables/caseload/next-step";
import { planOf } from "../../../src/tables/caseload/plan";
import { PLAN_TIERS, type PlanItem, type PlanReason } from "../../../src/tables/caseload/plan-item";
import type { PlannedVisit } from "../../../src/tables/caseload/plan-visits";
import { reasonsInWords } from "../../../src/tables/caseload/reason";
import type { TableContext } from "../../../src/tables/context";
import { planNotes } from "../../../src/tables/recheck-plan";
import type { CaseloadListed, ChildLine, VisitToMake } from "./listed";

/** Children whose lines cross to the pane: more than any one person follows. */
export const MOST_LINES = 1000;

/** What the pane shows of one therapist's children on the as-of date. */
export function listCaseload(context: TableContext, therapist: string, visits: number): CaseloadListed {
  const own = childrenOf(concernsOfFollowed(context), therapist);
  return {
    title: own.length === 0 ? null : caseloadTitle(own),
    therapist,
    label: dayInWords(context.asOf),
    children: own.length,
    lines: own.slice(0, MOST_LINES).map((concerns) => lineOf(context, concerns)),
    visits: planOf(context, own, visits).map((visit) => visitOf(context, visit)),
    notes: caseloadNotes(context),
    planNotes: planNotes(context),
  };
}

function lineOf(context: TableContext, concerns: Concerns): ChildLine {
  const { cohort, asOf } = context;
  return {
    child: cohort.ids[concerns.child] as string,
    age: bothAges(cohort.clocks[concerns.child] as AgeClock, asOf),
    priority: concerns.priority,
    reasons: reasonsInWords(context, concerns),
    nextStep: nextStepInWords(context, concerns),
  };
}

function visitOf(context: TableContext, { child, items }: PlannedVisit): VisitToMake {
  const whys = (Object.keys(PLAN_TIERS) as PlanReason[]).filter((why) => items.some((item) => item.why === why));
  return {
    child: context.cohort.ids[child] as string,
    looks: whys.map((why) => ({
      why,
      names: items.filter((item) => item.why === why).map((item) => nameOf(context, item)),
    })),
  };
}

/** The skill's label, or the sign in the program's own words. */
function nameOf({ cohort }: TableContext, { skill, sign }: PlanItem): string {
  const looked = skill === null ? undefined : cohort.skills[skill];
  return looked ? labelOf(looked) : (sign?.sign ?? "");
}
