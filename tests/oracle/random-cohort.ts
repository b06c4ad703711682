/** Small invented programs made of the awkward cases: month ends, exact edges, gaps, overlaps, losses, disagreements. */
import * as fc from "fast-check";
import { addDays, addMonths } from "./calendar";
import { draftArbitrary, skillId, type ChildDraft, type CohortOptions, type Draft } from "./cohort-draft";
import type { ChildRow, ObservationRow, OracleInput, Result } from "./input";

export function cohortArbitrary(options: CohortOptions = {}): fc.Arbitrary<OracleInput> {
  return draftArbitrary(options).map((draft) => assembled(draft, options.rare ?? false));
}

/** The same program for the same seed. */
export function seededCohort(seed: number, options: CohortOptions = {}): OracleInput {
  const [cohort] = fc.sample(cohortArbitrary(options), { seed, numRuns: 1 });
  if (cohort === undefined) throw new RangeError("seededCohort: nothing was drawn");
  return cohort;
}

function assembled(draft: Draft, rare: boolean): OracleInput {
  const children: ChildRow[] = [];
  const observations: ObservationRow[] = [];
  draft.children.forEach((each, i) => {
    const id = `C${String(i + 1).padStart(2, "0")}`;
    const rows = enrolmentRows(each, id, draft.settings.asOf, rare);
    children.push(...rows);
    observations.push(...observationRows(each, id, rows, draft));
  });
  return {
    // Sheets are seldom in order of child or day: the enrolments of one child do not stand together.
    children: rare
      ? [...children].sort((a, b) => (a.therapist < b.therapist ? -1 : a.therapist > b.therapist ? 1 : 0))
      : children,
    observations: rare ? observations : withoutContradiction(observations),
    skills: draft.skills,
    settings: draft.settings,
  };
}

/** The age of the draft on the as-of date, counted from birth or from the day the child was due; never after that date. */
function birthOf(draft: ChildDraft, asOfDay: string): string {
  const anchor = addDays(addMonths(asOfDay, -draft.monthsAtAsOf), draft.daysOff);
  const early = draft.countFromTerm && draft.gestation !== null ? Math.max(0, 280 - draft.gestation) : 0;
  const birth = addDays(anchor, -early);
  return birth < asOfDay ? birth : asOfDay;
}

function enrolmentRows(draft: ChildDraft, id: string, asOfDay: string, rare: boolean): ChildRow[] {
  const birth = birthOf(draft, asOfDay);
  const rows: ChildRow[] = [];
  draft.enrolments.forEach(({ from, stay, blank, site, therapist }, i) => {
    const drawn = addDays(from.anchor === "birth" ? birth : asOfDay, from.days);
    const enrolled = drawn < birth ? birth : drawn;
    if (!rare && rows.some((row) => row.enrolled === enrolled)) return;
    const isBlank = blank && (rare || draft.enrolments.length === 1);
    const gestation = i > 0 && draft.secondGestation !== "same" ? draft.secondGestation : draft.gestation;
    rows.push({
      child: id,
      birth: i > 0 && draft.secondBirth ? addDays(birth, 1) : birth,
      gestation,
      site,
      therapist,
      enrolled: isBlank ? null : enrolled,
      left: stay === null ? null : addDays(enrolled, stay),
    });
  });
  return rows;
}

function observationRows(draft: ChildDraft, id: string, rows: readonly ChildRow[], whole: Draft): ObservationRow[] {
  const { asOf: asOfDay } = whole.settings;
  const birth = rows[0]?.birth ?? asOfDay;
  return draft.observations.flatMap(({ skill, when, result, observer, entered, again }, i) => {
    const row = rows[i % Math.max(1, rows.length)];
    const anchors = { birth, asOf: asOfDay, enrolled: row?.enrolled ?? birth, left: row?.left ?? asOfDay };
    const date = addDays(anchors[when.anchor], when.days);
    const typed = entered === null ? null : addDays(date, entered);
    const first = { child: id, skill: skillId(skill % whole.skills.length), date, result, observer, entered: typed };
    if (again === "no") return [first];
    return again === "exact copy" ? [first, { ...first }] : [first, { ...first, ...again }];
  });
}

/** Keeps what the first row says where one named observer says two things of one child, skill and day. */
function withoutContradiction(rows: readonly ObservationRow[]): ObservationRow[] {
  const said = new Map<string, Result>();
  return rows.filter(({ child: id, skill, date, observer, result }) => {
    if (!observer) return true;
    const key = JSON.stringify([id, skill, date, observer]);
    const before = said.get(key);
    said.set(key, before ?? result);
    return before === undefined || before === result;
  });
}
