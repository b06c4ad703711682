import type { PlanReason } from "../../../src/tables/caseload/plan-item";
import type { Priority } from "../../../src/tables/caseload/concerns";
import type { PageSubject } from "../../../src/report/pages/make-page";
import type { RecordsFound } from "../records/found";

/** The children of one therapist, in order of urgency, as the pane lists them. */
export interface CaseloadListed {
  /** The finding, as a sentence; null where nobody is followed. */
  readonly title: string | null;
  /** "" where no therapist is recorded. */
  readonly therapist: string;
  /** The as-of date, in words. */
  readonly label: string;
  readonly children: number;
  /** All of the children, or the first of very many. */
  readonly lines: readonly ChildLine[];
  readonly visits: readonly VisitToMake[];
  /** How the order is made, and the plan. */
  readonly notes: readonly string[];
  readonly planNotes: readonly string[];
}

/** One child: what stands out, and what to do next. */
export interface ChildLine {
  readonly child: string;
  /** Both ages on the as-of date, in words. */
  readonly age: string;
  readonly priority: Priority;
  readonly reasons: readonly string[];
  readonly nextStep: string;
}

/** A visit of the re-check plan: what to look at, by why. */
export interface VisitToMake {
  readonly child: string;
  readonly looks: readonly { readonly why: PlanReason; readonly names: readonly string[] }[];
}

export interface CaseloadBuilt {
  readonly found: RecordsFound;
  /** Null where the records cannot be used, or where a therapist must be chosen first. */
  readonly listed: CaseloadListed | null;
}

/** A page that was made, less its sheet. */
export interface PageMade {
  readonly subject: PageSubject;
  /** The as-of date, in words. */
  readonly label: string;
  /** It names nobody. */
  readonly fileName: string;
}
