import type { Severity } from "./finding";

/**
 * Every rule that a finding can name. An `error` leaves its row out, and `reason` is how the row is counted; a `warning`
 * and a `note` never do.
 */
export interface Rule {
  readonly id: string;
  readonly severity: Severity;
  /** The words under which left-out rows are counted; "" where the rule leaves none out. */
  readonly reason: string;
  /** What the rule looks for, for the documentation. */
  readonly explanation: string;
  readonly expected: string;
  readonly advice: string;
}

type RuleRow = readonly [
  id: string,
  severity: Severity,
  reason: string,
  explanation: string,
  expected: string,
  advice: string,
];

const STRUCTURE: readonly RuleRow[] = [
  [
    "table-missing",
    "note",
    "",
    "An optional table is not in the workbook; its reports are switched off.",
    "a table of this name, or its headings in one row",
    "Add the table if its reports are wanted; nothing else is needed.",
  ],
  [
    "table-empty",
    "note",
    "",
    "A table has headings and no rows.",
    "at least one row below the headings",
    "Fill the table, or leave it so if nothing is recorded yet.",
  ],
  [
    "heading-unknown",
    "error",
    "heading not found",
    "A heading that the table needs was not found.",
    "the headings that the table needs",
    "Rename the heading, or settle what it stands for with a heading decision.",
  ],
  [
    "heading-twice",
    "warning",
    "",
    "One heading matches two columns; neither is read.",
    "one column for each heading",
    "Rename one of the two columns, so that one of them is left.",
  ],
  [
    "heading-beside",
    "note",
    "",
    "A known heading stands beside the table, past a column without a heading; it is not read.",
    "headings without a gap",
    "If the column belongs to the table, give the column between them a heading.",
  ],
  [
    "heading-not-read",
    "note",
    "",
    "A heading of a table that is read, whose column is not used.",
    "a heading that the table knows",
    "Nothing to do if the column is not needed; otherwise choose what the heading stands for.",
  ],
  [
    "column-not-found",
    "warning",
    "",
    "No column says who left, when a child was enrolled, how early it was born, its site, its therapist, or whether a skill was gained.",
    "a column of this name",
    "Choose its heading, or leave it if nothing is recorded.",
  ],
  [
    "total-row",
    "error",
    "total row",
    "A row of totals inside a table.",
    "a row of the records",
    "Nothing to do if it is a total; otherwise give the row its own id.",
  ],
  [
    "exact-copy",
    "error",
    "exact copy",
    "A row that is an exact copy of an earlier one; the earlier one is used.",
    "each row once",
    "Delete the copy, or correct it if it was meant to differ.",
  ],
  [
    "cell-error",
    "error",
    "cell holds an error",
    "A cell that is needed holds an error such as #N/A.",
    "a value",
    "Repair the formula, or type the value.",
  ],
  [
    "cell-no-value",
    "error",
    "formula without a value",
    "A formula whose result the file does not hold.",
    "a value, or a formula with its result",
    "Open the file in the spreadsheet program, let it calculate, and save it again.",
  ],
  [
    "cell-not-read",
    "warning",
    "",
    "A cell that may be blank could not be read; it is treated as blank.",
    "a value in the form of this column, or blank",
    "Correct the cell, or clear it.",
  ],
  [
    "cell-blank",
    "error",
    "needed cell blank",
    "A cell that the row needs is blank.",
    "a value",
    "Fill the cell, or delete the row.",
  ],
  [
    "word-unknown",
    "warning",
    "",
    "A word that is not one of the column's words; the cell is treated as blank.",
    "one of the words of this column, or blank",
    "Write one of the words named, or clear the cell.",
  ],
];

const IDS: readonly RuleRow[] = [
  [
    "child-blank",
    "error",
    "child blank",
    "A row without a child.",
    "the child's id",
    "Fill in the id, or delete the row.",
  ],
  [
    "child-unknown",
    "error",
    "child not in Children",
    "A row of a child that Children does not hold.",
    "an id that stands in Children",
    "Correct the id, add the child to Children, or settle it with a same-child decision.",
  ],
  [
    "child-left-out",
    "error",
    "child left out",
    "A row of a child whose rows in Children cannot be used.",
    "a child whose rows in Children can be used",
    "Settle the finding about this child in Children; this row then counts by itself.",
  ],
  [
    "id-is-date",
    "error",
    "id turned into a date",
    "An id that the spreadsheet turned into a date.",
    "an id as text",
    "Format the column as text, and type the id again.",
  ],
  [
    "skill-blank",
    "error",
    "skill blank",
    "A row without a skill.",
    "a skill id of the Skills table",
    "Fill in the skill, or delete the row.",
  ],
  [
    "skill-unknown",
    "error",
    "skill not in Skills",
    "A row of a skill that Skills does not hold.",
    "a skill id or label of the Skills table",
    "Correct the skill, add it to Skills, or settle it with a skill-alias decision.",
  ],
  [
    "skill-left-out",
    "error",
    "skill left out",
    "A row of a skill whose row in Skills cannot be used.",
    "a skill whose row in Skills can be used",
    "Settle the finding about this skill in Skills; this row then counts by itself.",
  ],
  [
    "area-unknown",
    "error",
    "area not known",
    "An area that is neither in Skills nor one of the six.",
    "an area of the Skills table, or one of the six",
    "Correct the area, or give it to a skill in Skills; several areas are separated by a semicolon.",
  ],
];

const DATES: readonly RuleRow[] = [
  [
    "date-blank",
    "error",
    "date blank",
    "A row without the date it needs.",
    "a date",
    "Fill in the date, or delete the row.",
  ],
  [
    "date-unreadable",
    "error",
    "date not readable",
    "A cell that is no date, or a date that the calendar does not have.",
    "a date such as 2026-03-31",
    "Type the date again as year-month-day.",
  ],
  [
    "date-two-digit-year",
    "error",
    "two-digit year",
    "A date whose year has two digits.",
    "a year of four digits",
    "Type the date again with its full year.",
  ],
  [
    "date-order-unknown",
    "error",
    "order of day and month not settled",
    "A text date that could be read with the day or the month first, in a column that proves neither.",
    "a column whose dates prove their order, or the setting monthFirst",
    "Set monthFirst, settle the column with a date-order decision, or type the date as year-month-day.",
  ],
  [
    "date-order-contradicts",
    "error",
    "text dates contradict each other",
    "Text dates of one column prove both orders, the day first and the month first.",
    "one order in the whole column",
    "Type the date as year-month-day, or settle the column with a date-order decision.",
  ],
  [
    "date-column-swapped",
    "error",
    "day and month look swapped",
    "The column shows the sign of swapped day and month: its true dates all have a day of 12 or less, and its text dates a part over 12. The column is not used; in one that may be blank this is a warning, and its cells count as blank.",
    "true dates, or text dates, but not the two kinds that a wrong import leaves",
    "Import the column again with the right order of day and month; if the dates are right as they stand, settle the column with a date-order decision.",
  ],
  [
    "date-time-dropped",
    "note",
    "",
    "A date with a time of day; the time is dropped.",
    "a date without a time",
    "Nothing to do: only the day counts.",
  ],
  [
    "date-before-birth",
    "error",
    "before birth",
    "A date before the child was born.",
    "a date on or after the child's birth date",
    "Correct this date, or the birth date in Children.",
  ],
  [
    "date-after-as-of",
    "error",
    "after the as-of date",
    "A date after the as-of date.",
    "a date up to the as-of date",
    "Nothing to do if the row belongs to a later report; otherwise correct the date.",
  ],
  [
    "step-after-as-of",
    "note",
    "",
    "A later step dated after the as-of date counts as not yet taken.",
    "a date up to the as-of date, or blank",
    "Nothing to do if the step belongs to a later report; otherwise correct the date.",
  ],
  [
    "entered-after-cut-off",
    "error",
    "entered after the cut-off",
    "A row typed in after the day set by enteredBy.",
    "a row entered by the cut-off",
    "Nothing to do: the cut-off was asked for.",
  ],
  [
    "entered-before-seen",
    "warning",
    "",
    "A row that was entered before the day it was seen.",
    "an entry date on or after the date",
    "Look which of the two dates is right.",
  ],
];

const CHILDREN: readonly RuleRow[] = [
  [
    "birth-blank",
    "error",
    "birth date blank",
    "A child without a birth date.",
    "a birth date",
    "Fill in the birth date.",
  ],
  [
    "birth-other-row",
    "warning",
    "",
    "A blank birth date of a child whose other row has one; that one is used.",
    "the birth date in every row of the child",
    "Fill in the birth date.",
  ],
  [
    "birth-conflict",
    "error",
    "birth dates of one child differ",
    "Rows of one child give different birth dates; the child is left out until it is settled.",
    "one birth date in all rows of a child",
    "Find out which birth date is right, and correct the other rows.",
  ],
  [
    "gestation-illegal",
    "warning",
    "",
    "A gestation that cannot be read or is out of range; the child is used and not corrected.",
    "28+3, 28w3d, 28w, 28 3/7, whole weeks (20 to 45) or days (140 to 321)",
    "Correct the gestation; clear it if it is not known.",
  ],
  [
    "gestation-is-date",
    "warning",
    "",
    "A gestation that the spreadsheet turned into a date, as it does with 28/3; the child is used and not corrected.",
    "28+3 as text",
    "Format the column as text, and type the gestation again, such as 28+3.",
  ],
  [
    "gestation-undecided",
    "warning",
    "",
    "A bare decimal such as 28.3 that may be days or tenths of a week; the child is used and not corrected.",
    "28+3, or the setting gestationDecimals",
    "Set gestationDecimals to days or weeks, or write the gestation as 28+3.",
  ],
  [
    "due-date-implausible",
    "warning",
    "",
    "A due date that would make the gestation shorter than 20 weeks or longer than 46; the child is used and not corrected.",
    "the day on which the child was due",
    "Correct the due date, or the birth date; clear the due date if it is not known.",
  ],
  [
    "weeks-early-illegal",
    "warning",
    "",
    "Weeks early that cannot be read or are out of range; the child is used and not corrected.",
    "weeks before the due date, such as 8",
    "Correct the cell; if it holds weeks of gestation, choose Gestation for its heading.",
  ],
  [
    "gestation-conflict",
    "warning",
    "",
    "Rows of one child give different gestations; the child is not corrected until it is settled.",
    "one gestation in all rows of a child",
    "Find out which gestation is right, and correct the other rows.",
  ],
  [
    "enrolled-blank",
    "warning",
    "",
    "A blank Enrolled; the child counts as followed from the first observation.",
    "the day the child was enrolled",
    "Fill in the day.",
  ],
  [
    "enrolled-before-birth",
    "warning",
    "",
    "Enrolled before birth; the child counts as followed from birth.",
    "a day on or after the birth date",
    "Correct this date, or the birth date.",
  ],
  [
    "left-before-enrolled",
    "error",
    "left before enrolled",
    "Left before the day of enrolment, or before birth.",
    "a day after Enrolled, or blank",
    "Correct one of the two dates.",
  ],
  [
    "left-on-enrolment",
    "warning",
    "",
    "Left on the day of enrolment: the child is followed on no day.",
    "a day after Enrolled, or blank",
    "Look whether the two dates are right.",
  ],
  [
    "enrolment-superseded",
    "error",
    "older row of the same enrollment",
    "A row without a day of leaving beside another of the same child and the same day of enrollment that has one: the other one counts.",
    "one row per child and enrollment",
    "Nothing to do if it is last year's list; otherwise correct one of the two rows.",
  ],
  [
    "age-implausible",
    "warning",
    "",
    "A child that was older than 10 years at enrollment or at a check, or a birth date that makes it so.",
    "dates of infants and toddlers",
    "Look at the birth date and at this date: one of them is likely a slip.",
  ],
  [
    "enrolment-overlap",
    "warning",
    "",
    "Two enrolments of one child overlap; where they do, the later begun counts.",
    "enrolments of one child one after the other",
    "Enter the day the child left before it was enrolled again.",
  ],
  [
    "enrolled-after-as-of",
    "note",
    "",
    "Enrolled or left after the as-of date.",
    "a day up to the as-of date",
    "Nothing to do if the date is right.",
  ],
  [
    "outside-enrolment",
    "note",
    "",
    "A row from before enrolment or after leaving; a look is used, a referral is not counted among those of followed children.",
    "a date while the child is followed",
    "Look whether the date, or the enrolment, is right.",
  ],
];

const OBSERVATIONS: readonly RuleRow[] = [
  [
    "result-blank",
    "error",
    "result blank",
    "A row without a result.",
    "met, emerging, not met or lost",
    "Fill in the result, or delete the row.",
  ],
  [
    "result-left-out",
    "error",
    "left out by you",
    "A result written as a word that you chose to leave out. It is counted, and not listed cell by cell.",
    "a word that counts",
    "Nothing to do; choose another meaning for the word if they should count.",
  ],
  [
    "result-unknown",
    "error",
    "result not known",
    "A result that is not one of the four.",
    "met, emerging, not met or lost",
    "Write one of the four results.",
  ],
  [
    "result-needs-date",
    "error",
    "result without a date",
    "A result word on a wide sheet without a column Date.",
    "a date, or a column Date beside the result words",
    "Add a column Date with the day of the visit, or write the date in place of the word.",
  ],
  [
    "results-differ",
    "warning",
    "",
    "Different results for one child, skill and day; the day counts as not met.",
    "one result for each child, skill and day",
    "Look whether one of the results is a slip.",
  ],
];

const OTHERS: readonly RuleRow[] = [
  [
    "number-unreadable",
    "error",
    "number not readable",
    "A cell that is no number.",
    "a number",
    "Type a number, or clear the cell.",
  ],
  [
    "skill-twice",
    "error",
    "skill id twice",
    "A skill id that stands in Skills twice; the first row is used.",
    "each skill id once",
    "Give the skill an id of its own, or delete the row.",
  ],
  [
    "window-empty",
    "error",
    "window closes before it opens",
    "A window that closes no later than it opens.",
    "Closes greater than Opens",
    "Correct one of the two.",
  ],
  [
    "month-illegal",
    "error",
    "months out of range",
    "A window edge out of range.",
    "months from 0 to 216, or blank",
    "Write the age in months.",
  ],
  [
    "share-as-percent",
    "error",
    "expected share given as percent",
    "An expected share over 1, as if in percent.",
    "a share from 0 to 1, such as 0.75",
    "Write 0.75 in place of 75.",
  ],
  [
    "share-illegal",
    "error",
    "expected share out of range",
    "An expected share out of range.",
    "a share over 0 and at most 1, or blank",
    "Correct the share, or clear it where the source gives none.",
  ],
  [
    "age-basis-unknown",
    "error",
    "age basis not known",
    "An age basis that is neither corrected nor chronological.",
    "corrected, chronological, or blank for corrected",
    "Write one of the two words.",
  ],
  [
    "follows-unknown",
    "warning",
    "",
    "Follows names a skill that Skills does not hold; it is treated as blank.",
    "a skill id of this table, or blank",
    "Correct the id, or clear the cell.",
  ],
  [
    "follows-circle",
    "warning",
    "",
    "Skills that follow each other in a circle; Follows is treated as blank in each of them.",
    "a skill that came before",
    "Clear Follows in the skill that comes first.",
  ],
  [
    "step-before",
    "warning",
    "",
    "A later step is dated before the first; its date is not used.",
    "a date on or after the first step of the row",
    "Correct one of the two dates.",
  ],
  [
    "evaluated-before-referred",
    "error",
    "evaluated before referred",
    "An evaluation dated before the referral that it answers.",
    "an evaluation on or after the day of referral",
    "Correct one of the two dates; an evaluation of an earlier referral belongs to that one's row.",
  ],
  [
    "plan-before-evaluation",
    "warning",
    "",
    "A plan dated before the evaluation; both dates are used.",
    "a plan on or after the evaluation",
    "Look whether it is an interim plan; otherwise correct one of the dates.",
  ],
  [
    "seen-unknown",
    "error",
    "seen not known",
    "Whether the sign was seen is not one of the three words.",
    "present, absent or not looked for",
    "Write one of the three.",
  ],
  [
    "rating-illegal",
    "error",
    "level out of range",
    "A level that is not a whole number from 1 to the highest of the program's scale (ratingLevels).",
    "a whole number from 1 to the highest level, or blank",
    "Correct the level, or say with the setting ratingLevels how many levels your scale has.",
  ],
  [
    "exit-before-entry",
    "error",
    "exit before entry",
    "An exit rating dated before the entry rating.",
    "an exit date on or after the entry date",
    "Correct one of the two dates.",
  ],
  [
    "rating-twice",
    "warning",
    "",
    "A child with several rows for one outcome.",
    "one row for each child and outcome",
    "Look whether one of the rows is left from an earlier version.",
  ],
  [
    "rating-impossible",
    "warning",
    "",
    "An exit level above the entry level, and no skill gained: one of them is wrong.",
    "yes in Gained any skill, or an exit level not above the entry level",
    "Check both levels with those who gave them.",
  ],
  [
    "new-since-entry-blank",
    "warning",
    "",
    "Two levels that give no progress category without the answer to Gained any skill.",
    "yes or no",
    "Answer whether the child gained any skill since entry.",
  ],
  [
    "decision-applied",
    "note",
    "",
    "A repair decision in force.",
    "nothing",
    "Revoke the decision if it no longer holds.",
  ],
  [
    "decision-unused",
    "note",
    "",
    "A repair decision that nothing in the workbook needs.",
    "a decision that the workbook needs",
    "Nothing to do; revoke it if it is out of date.",
  ],
];

export const RULES: readonly Rule[] = [STRUCTURE, IDS, DATES, CHILDREN, OBSERVATIONS, OTHERS]
  .flat()
  .map(([id, severity, reason, explanation, expected, advice]) => ({
    id,
    severity,
    reason,
    explanation,
    expected,
    advice,
  }));

const byId = new Map(RULES.map((rule, order) => [rule.id, { rule, order }]));

/** @throws {RangeError} for an id that is not in the list */
export function ruleOf(id: string): Rule {
  return entryOf(id).rule;
}

/** The place of a rule in the list. */
export function ruleOrder(id: string): number {
  return entryOf(id).order;
}

function entryOf(id: string): { rule: Rule; order: number } {
  const entry = byId.get(id);
  if (!entry) throw new RangeError(`rules: no rule is called ${id}`);
  return entry;
}
