import { isoOf } from "../age/day";
import { planHorizon, therapistPlans, type TherapistPlan } from "./caseload/plan";
import { LOOKS_PER_VISIT, VISITS_IN_PLAN } from "./caseload/plan-visits";
import { planReasonInWords } from "./caseload/plan-words";
import type { TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "therapist", label: "Therapist", unit: "text" },
  { key: "order", label: "Order", unit: "number" },
  { key: "child", label: "Child", unit: "text" },
  { key: "skill", label: "Skill", unit: "text" },
  { key: "reason", label: "Why", unit: "text" },
];

/** Which children and skills each therapist looks at next: one row a look, in the order of the visits. */
export function recheckPlan(context: TableContext): Table<"recheck-plan"> {
  return {
    id: "recheck-plan",
    title: "What to check next, safety first (internal)",
    population: "Children in the program on the as-of date, under the therapist of the enrollment in force that day",
    columns: COLUMNS,
    rows: therapistPlans(context).flatMap((plan) => rowsOf(context, plan)),
    notes: [
      `Each therapist has room for ${VISITS_IN_PLAN} visits to one child each, and a visit for ${LOOKS_PER_VISIT} checks (our choice: about one visit per week over a quarter). Order numbers the checks; the reason names the visit.`,
      ...planNotes(context),
      "A row without a skill is a warning sign. Nothing here is a diagnosis: the child's clinician and local rules decide, and what the family asks comes before any plan.",
    ],
    internal: true,
  };
}

/** What comes first in a plan, and what it counts as unknown. */
export function planNotes({ asOf }: TableContext): string[] {
  return [
    "First, signs without follow-up and losses; then skills past their windows; then skills whose windows closed unchecked, and different results on one day. The rest goes where a visit spares the next report most unknowns, so that the plan as a whole spares it the most that its visits can.",
    `Unknown means that the report of ${isoOf(planHorizon(asOf))} would find the skill never checked, or not met and in need of a recheck by then. Only skills near their windows count: from the opening, or six months before the close where no opening is published, to six months after it; one that a later skill has replaced does not.`,
  ];
}

function rowsOf({ cohort }: TableContext, { therapist, visits }: TherapistPlan): TableValue[][] {
  const looks = visits.flatMap(({ items }, visit) => items.map((item) => ({ item, visit: visit + 1 })));
  return looks.map(({ item, visit }, at) => [
    therapist,
    at + 1,
    cohort.ids[item.child] as string,
    item.skill === null ? null : (cohort.skills[item.skill]?.id ?? null),
    `Visit ${visit}: ${planReasonInWords(item)}.`,
  ]);
}
