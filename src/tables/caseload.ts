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
  { key: "dueUnchecked", label: "Window closed, not checked since", unit: "count" },
  { key: "outOfDate", label: "Skills that need a recheck", unit: "count" },
  { key: "openingSoon", label: "Windows opening", unit: "count" },
  { key: "correctionStops", label: "Correcting stops", unit: "date" },
  { key: "disagreements", label: "Different results", unit: "count" },
  { key: "visitDue", label: "Routine visit", unit: "date" },
  { key: "transitionDue", label: "Transition conference by", unit: "date" },
];

/** One row per child followed on the as-of date, per therapist in order of urgency: internal, since each stands for one child. */
export function caseload(context: TableContext): Table<"caseload"> {
  return {
    id: "caseload",
    title: "Each therapist's children, the most urgent first (internal)",
    population: "Children in the program on the as-of date, under the therapist of the enrollment in force that day",
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
    nextStepInWords(context, concerns),
    concerns.lost.length + concerns.toConfirm.length,
    concerns.openSigns.length,
    concerns.past.length,
    concerns.due.length,
    concerns.outOfDate.length,
    concerns.opening.length,
    correctionStops === null ? null : isoOf(correctionStops),
    concerns.disagreed.length,
    visit === null ? null : isoOf(visit.day),
    transition === null ? null : isoOf(transition.conferenceBy),
  ];
}

const NOTES: readonly string[] = [
  "Nothing here is a diagnosis. Priority says what comes first, and never ranks children or colleagues. 1: a loss, or a present sign without follow-up. 2: past the window in earnest. 3: one skill just past, or observers who disagree. 4: not known. 5: something due or opening. 6: nothing noted. The child's clinician and local rules decide.",
  "Talk with the child's clinician about every loss and every warning sign without waiting. A loss that one check alone suggests is marked to confirm.",
  "A skill is past its window when it was checked and not met on a day when the child's age was at or after the close. The CDC/AAP ages are those by which 75% or more of children do a skill, chosen so that a missed one leads to a talk and to screening rather than to waiting (Zubler et al., Pediatrics 2022;149(3):e2021052138).",
  "Priority 2: two skills past or more; or one of hearing or seeing (the column Sense; where it is blank throughout, the area sensory), one of 99 in 100, or one that was past by a quarter of its closing age at the last check. The groups are our choice. A window without a source counts like one of 75 in 100.",
  "A skill that is past only because correcting age stopped within the last 3 months counts for priority 3 alone.",
  "Not known (priority 4): never checked, or nothing checked within the recheck limit; or a skill whose window closed since its last check or, where it was never checked, while the child was in the program.",
  "Within a priority come first: hearing or seeing among the skills lost, past or due; more areas with such skills; more such skills; the largest age at the check over the close; then the child's code.",
  "A skill that a later one has replaced (Follows) is not counted once the later one is met: who walks need not crawl.",
  "Due: windows that open, and correcting that stops, in the 30 days after the as-of date; a routine visit whose age (2, 4, 6, 9, 12, 15, 18, 24, 30, 36 months since birth; general screening at 9, 18, 30, autism screening at 18, 24: Lipkin and Macias, Pediatrics 2020;145(1):e20193449) the child comes to on that date or in the 30 days after it. The records do not show which visits were held.",
  "Transition: 34 CFR 303.209 asks for a conference not fewer than 90 days before the third birthday; the date is shown from 9 months before that birthday until it. A child who came to the program later than that date is marked as soon as possible. A child born on February 29 turns three on February 28 here. The records do not show which conferences were held.",
];

const NO_SIGNS =
  "The workbook has no table Signs: no warning sign is counted here, which says nothing about the children.";
