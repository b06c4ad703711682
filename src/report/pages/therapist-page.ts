import { dayInWords } from "../../words/dates";
import type { Concerns, Priority } from "../../tables/caseload/concerns";
import { nextStepInWords } from "../../tables/caseload/next-step";
import { planOf } from "../../tables/caseload/plan";
import { PRIORITY_WORDS } from "../../tables/caseload/priority";
import { reasonInWords } from "../../tables/caseload/reason";
import type { TableContext } from "../../tables/context";
import type { SheetOut } from "../../workbook/sheets";
import { SheetDraft } from "../sheets/sheet-draft";
import { plural } from "../../words/numbers";
import { onePage } from "./page-draft";
import { type VisitLine, visitLines } from "./visit-lines";

/** Child, age, why, a gap, what next. */
const WIDTHS = [11, 8, 51, 2, 41];
/** Up to here rows are told in full: the rest of the page is for what to check next. */
const FULL_ROWS_POINTS = 600;
/** No visit is begun below this, so that the page is printed at four fifths of its size at least. */
const LAST_VISIT_POINTS = 800;
const MOST_VISITS = 6;

/** One page for one therapist: the children in order of urgency, then what to check next. */
export function therapistPage(context: TableContext, own: readonly Concerns[], visits?: number): SheetOut {
  const draft = new SheetDraft(
    "Caseload (internal)",
    WIDTHS.map((width) => ({ width })),
    WIDTHS.length - 1,
  );
  draft.spanning(`Internal. ${caseloadTitle(own)}`, "title");
  draft.spanning(
    `As of ${dayInWords(context.asOf)}. The order says what comes first; it ranks nobody. Nothing here is a diagnosis: the child's clinician and local rules decide.`,
    "subtitle",
  );
  draft.row(["Child", "Months", "Why", null, "What to do next"].map((value) => ({ value, style: "heading" as const })));
  const told = tellInFull(draft, context, own);
  if (told < own.length) draft.spanning(restInWords(context, own.slice(told)), "note");
  draft.spanning("What to check next", "section");
  tellVisits(draft, visitLines(context, planOf(context, own, visits)));
  return draft.finished(onePage("INTERNAL: about single children, not to be passed on", context.asOf));
}

/** The finding of a caseload: `Caseload of T01: 17 children, 3 to talk about now`. */
export function caseloadTitle(own: readonly Concerns[]): string {
  const whose = own[0]?.therapist === "" ? "Children without a therapist" : `Caseload of ${own[0]?.therapist}`;
  return `${whose}: ${plural(own.length, "child", "children")}, ${findingOf(own)}`;
}

function findingOf(own: readonly Concerns[]): string {
  const count = (...priorities: Priority[]) => own.filter(({ priority }) => priorities.includes(priority)).length;
  if (count(1, 2) > 0) return `${count(1, 2)} to talk about with the clinician now`;
  if (count(3) > 0) return `${count(3)} to check again and talk about`;
  if (count(4) > 0) return `${count(4)} to check now`;
  return "none with a loss, a sign or a skill past its window in the records";
}

/** As many visits of the plan as the page has room for, and how many more there are. */
function tellVisits(draft: SheetDraft, lines: readonly VisitLine[]): void {
  let told = 0;
  while (told < Math.min(lines.length, MOST_VISITS) && draft.heightPoints <= LAST_VISIT_POINTS) {
    const { child, looks } = lines[told] as VisitLine;
    draft.beside([{ value: child, style: "label" }], looks, "note", {});
    told += 1;
  }
  const more = lines.length - told;
  if (more > 0)
    draft.spanning(`${plural(more, "more visit", "more visits")} in this plan: see the re-check plan.`, "note");
}

/** Writes rows until the page is full; losses, signs and what is past in earnest are always told. Gives how many were. */
function tellInFull(draft: SheetDraft, context: TableContext, own: readonly Concerns[]): number {
  let before: Priority | null = null;
  for (const [index, concerns] of own.entries()) {
    const { priority } = concerns;
    const isFull = draft.heightPoints > FULL_ROWS_POINTS && priority > 2;
    if (isFull || priority === 6) return index;
    if (priority !== before) draft.spanning(PRIORITY_WORDS[priority], "section");
    before = priority;
    draft.row(rowOf(context, concerns), 2);
  }
  return own.length;
}

function rowOf(context: TableContext, concerns: Concerns) {
  return [
    { value: context.cohort.ids[concerns.child] as string, style: "label" as const },
    { value: concerns.ageMonths, style: "note" as const, format: "months" as const },
    { value: reasonInWords(context, concerns), style: "note" as const },
    null,
    { value: nextStepInWords(context, concerns), style: "note" as const },
  ];
}

/** Those not told in full, a few words each. */
function restInWords({ cohort }: TableContext, rest: readonly Concerns[]): string {
  const told = rest.map((concerns) => `${cohort.ids[concerns.child]} (${shortly(concerns)})`);
  return `Also in the program: ${told.join(", ")}. The table caseload lists each in full.`;
}

function shortly({ priority, checks }: Concerns): string {
  if (priority < 6) return SHORT[priority as keyof typeof SHORT];
  return checks.last === null ? "never checked" : `last checked ${dayInWords(checks.last)}`;
}

const SHORT: Readonly<Record<Exclude<Priority, 6>, string>> = {
  1: "loss or sign",
  2: "past the window",
  3: "one past, or observers differ",
  4: "not known, check now",
  5: "something due",
};
