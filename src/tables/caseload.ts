import { isoOf } from "../age/day";
import type { Concerns } from "./caseload/concerns";
import { concernsOfFollowed } from "./caseload/followed";
import { nextStepInWords } from "./caseload/next-step";
import { reasonInWords } from "./caseload/reason";
import type { TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "therapist", label: "Therapist", unit: "text" },
  { key: "child", label: "Child", unit: "text" },
  { key: "ageMonths", label: "Age", unit: "months" },
  { key: "priority", label: "Priority", unit: "number" },
  { key: "reason", label: "Why", unit: "text" },
  { key: "nextStep", label: "What to do next", unit: "text" },
  { key: "lost", label: "Skills lost", unit: "count" },
  { key: "signsOpen", label: "Signs without follow-up", unit: "count" },
  { key: "pastWindow", label: "Skills past window", unit: "count" },
  { key: "outOfDate", label: "Skills out of date", unit: "count" },
  { key: "openingSoon", label: "Windows opening", unit: "count" },
  { key: "correctionStops", label: "Correcting stops", unit: "date" },
  { key: "disagreements", label: "Different results", unit: "count" },
  { key: "visitDue", label: "Routine visit", unit: "date" },
  { key: "transitionDue", label: "Transition conference by", unit: "date" },
];

/** One row a child followed on the as-of date, per therapist in order of urgency: internal, since each stands for one child. */
export function caseload(context: TableContext): Table<"caseload"> {
  return {
    id: "caseload",
    title: "Each therapist's children, the most urgent first (internal)",
    population: "Children followed on the as-of date, under the therapist of the enrolment in force that day",
    columns: COLUMNS,
    rows: concernsOfFollowed(context).map((concerns) => rowOf(context, concerns)),
    notes: caseloadNotes(context),
    internal: true,
  };
}

/** How the order is made, and what it does not know. */
export function caseloadNotes({ records }: TableContext): readonly string[] {
  return records.signs === null ? [...NOTES, NO_SIGNS] : NOTES;
}

function rowOf(context: TableContext, concerns: Concerns): TableValue[] {
  const { correctionStops, visit, transition } = concerns;
  return [
    concerns.therapist,
    context.cohort.ids[concerns.child] as string,
    concerns.ageMonths,
    concerns.priority,
    reasonInWords(context, concerns),
    nextStepInWords(concerns),
    concerns.lost.length + concerns.toConfirm.length,
    concerns.openSigns.length,
    concerns.past.length,
    concerns.outOfDate.length,
    concerns.opening.length,
    correctionStops === null ? null : isoOf(correctionStops),
    concerns.disagreed.length,
    visit === null ? null : isoOf(visit.day),
    transition === null ? null : isoOf(transition.conferenceBy),
  ];
}

const NOTES: readonly string[] = [
  "Nothing here is a diagnosis. Priority orders what to look at first, and never ranks children or colleagues: 1 a loss or a present sign without follow-up, 2 several skills past their windows, 3 out of date or different results on one day, 4 something due or opening, 5 nothing. The child's clinician and local rules decide.",
  "Talk with the child's clinician about every loss and every warning sign without waiting. A loss that one look alone suggests is marked to confirm.",
  "A skill past its window weighs 1 where its source expects 99 in 100 children to meet it by the close, 0.25 where 75 in 100, 0.5 where the source gives no share; between those two shares the weight runs in proportion. Weights of 2 or more count as several. One skill past a window of 75 in 100 is nothing unusual: up to one child in four is.",
  "Past a window and out of date count skills that were looked for and not met, the first however old the look. A skill that a later one has replaced (Follows) is not counted once the later one is met: who walks need not crawl.",
  "Due: windows that open, and correcting that stops, in the 30 days after the as-of date; a routine visit whose age (2, 4, 6, 9, 12, 15, 18, 24, 30, 36 months since birth; general screening at 9, 18, 30: Lipkin and Macias, Pediatrics 2020;145(1):e20193449) the child comes to on that date or in the 30 days after it. Visits held are not in the records.",
  "Transition: 34 CFR 303.209 asks for a conference not fewer than 90 days before the third birthday; the date is shown from 9 months before that birthday until it. A child born on 29 February turns three on 28 February here. Conferences held are not in the records.",
];

const NO_SIGNS =
  "The workbook has no table Signs: no warning sign is counted here, which says nothing about the children.";
