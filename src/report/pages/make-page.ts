import { buildCohort } from "../../cohort/cohort";
import type { Decision } from "../../records/corrections/decisions";
import { readRecords } from "../../records/read-records";
import { keyOf } from "../../records/cells/words";
import type { Settings } from "../../settings/settings";
import type { Concerns } from "../../tables/caseload/concerns";
import { concernsOfFollowed } from "../../tables/caseload/followed";
import { VISITS_IN_PLAN } from "../../tables/caseload/plan-visits";
import { type TableContext, tableContext } from "../../tables/context";
import type { SheetOut } from "../../workbook/sheets";
import type { WorkbookIn } from "../../workbook/workbook";
import { childPage } from "./child-page";
import { NobodyOfThatName } from "./nobody";
import { therapistPage } from "./therapist-page";

/** Whose page: one child's, or the caseload of one therapist. */
export type PageSubject =
  { readonly kind: "child"; readonly id: string } | { readonly kind: "therapist"; readonly code: string };

/**
 * One printable page from a workbook.
 *
 * @param visits - how many the plan on a caseload page is for
 * @throws {RecordsUnusable} when a table that is needed is missing, or none of its rows can be used
 * @throws {NobodyOfThatName} when no child followed on the as-of date has that id, or no therapist that code
 */
export function makePage(
  workbook: WorkbookIn,
  settings: Settings,
  decisions: readonly Decision[],
  subject: PageSubject,
  visits = VISITS_IN_PLAN,
): SheetOut {
  const records = readRecords(workbook, settings, decisions);
  return pageOf(tableContext(buildCohort(records, settings), settings, records), subject, visits);
}

/** The same from records that are read already. */
export function pageOf(context: TableContext, subject: PageSubject, visits = VISITS_IN_PLAN): SheetOut {
  const all = concernsOfFollowed(context);
  return subject.kind === "child"
    ? childPage(context, oneChild(context, all, subject.id))
    : therapistPage(context, caseloadOf(all, subject.code), visits);
}

function oneChild({ cohort }: TableContext, all: readonly Concerns[], id: string): Concerns {
  const index = cohort.ids.findIndex((each) => keyOf(each) === keyOf(id));
  if (index < 0) throw new NobodyOfThatName("No child in Children has that id. Check it against the column Child.");
  const concerns = all.find(({ child }) => child === index);
  if (concerns) return concerns;
  throw new NobodyOfThatName(
    "That child is not in the program on that day. Choose a day from its Enrolled up to the day before its Left.",
  );
}

function caseloadOf(all: readonly Concerns[], code: string): Concerns[] {
  const own = childrenOf(all, code);
  if (own.length > 0) return own;
  throw new NobodyOfThatName(
    "No child in the program on that day has that therapist. Check the code against the column Therapist, and the date.",
  );
}

/** The children of one therapist, in order of urgency; none where the code is nobody's. */
export function childrenOf(all: readonly Concerns[], code: string): Concerns[] {
  return all.filter(({ therapist }) => keyOf(therapist) === keyOf(code));
}
