import { ageDays, ageMonths, isAtLeast, isAtMost } from "./ages";
import { attainmentOf, looksOf, type Attainment, type Look } from "./attainment";
import { daysBetween } from "./calendar";
import { firstEnrolmentDay } from "./following";
import { groupsOf, type Entry } from "./groups";
import type { OracleInput, OracleRow, SkillRow } from "./input";

/** Days in a month of mean length, the convention of the WHO growth standards: 365.25 / 12. */
const MEAN_MONTH_DAYS = 30.4375;

/** What is known of one child and skill; never observed: no look. */
interface Known {
  readonly entry: Entry;
  readonly looks: readonly Look[];
  readonly attainment: Attainment | null;
}

/** METHOD.md, section 6, table 2: counts and bounds, one row an edge. */
export function reachedByAge(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const group of groupsOf(everFollowed, input.settings.by)) {
    for (const skill of input.skills) {
      for (const edge of input.settings.edges) {
        let [met, notMet, notKnown] = [0, 0, 0];
        for (const entry of group.entries) {
          const known = knownOf(input, entry, skill);
          if (isMetBy(input, known, skill, edge)) met += 1;
          else if (isNotMetBy(input, known, skill, edge)) notMet += 1;
          else notKnown += 1;
        }
        const children = met + notMet + notKnown;
        const bounds = { lowest: met / children, highest: (met + notKnown) / children };
        rows.push({ ...group.columns, skill: skill.skill, age: edge, children, met, notMet, notKnown, ...bounds });
      }
    }
  }
  return rows;
}

/** METHOD.md, section 6, table 3: counts and the recorded median, for the children observed. */
export function ageWhenMet(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const group of groupsOf(everFollowed, input.settings.by)) {
    for (const skill of input.skills) {
      const observed = observedOf(input, group.entries, skill);
      const attained = observed.filter((known) => known.attainment !== null);
      const hadAtFirstLook = attained.filter((known) => known.attainment?.hadAtFirstLook).length;
      const recorded = observed.flatMap(({ entry, attainment }) =>
        attainment === null ? [] : [ageDays(entry.person, skill.ageBasis, input.settings, attainment.by)],
      );
      rows.push({
        ...group.columns,
        skill: skill.skill,
        children: observed.length,
        hadAtFirstLook,
        interval: attained.length - hadAtFirstLook,
        notMet: observed.length - attained.length,
        recordedMedian: recorded.length === 0 ? null : middleOf(recorded) / MEAN_MONTH_DAYS,
      });
    }
  }
  return rows;
}

/** Whole days of age, (after, by], of every child of table 3; by null where the skill was never seen. */
export function ageIntervals(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const group of groupsOf(everFollowed, input.settings.by)) {
    for (const skill of input.skills) {
      for (const { entry, looks, attainment } of observedOf(input, group.entries, skill)) {
        const age = (day: string): number => ageDays(entry.person, skill.ageBasis, input.settings, day);
        const lastLook = looks[looks.length - 1]?.date ?? entry.day;
        const interval = { after: age(attainment?.after ?? lastLook), by: attainment ? age(attainment.by) : null };
        rows.push({ ...group.columns, child: entry.person.id, skill: skill.skill, ...interval });
      }
    }
  }
  return rows;
}

/** The second clock: days since the first enrolment, for children checked without the skill from that day on, before any met. */
export function enrolmentIntervals(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const skill of input.skills) {
    for (const known of observedOf(input, everFollowed, skill)) {
      const start = firstEnrolmentDay(known.entry.person, input.settings.asOf);
      const last = checksWithout(known)
        .filter((day) => day >= start)
        .at(-1);
      if (last === undefined) continue;
      const by = known.attainment === null ? null : daysBetween(start, known.attainment.by);
      rows.push({ child: known.entry.person.id, skill: skill.skill, after: daysBetween(start, last), by });
    }
  }
  return rows;
}

export function sinceEnrollment(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const intervals = enrolmentIntervals(input, everFollowed);
  return input.skills.map((skill) => {
    const own = intervals.filter((each) => each.skill === skill.skill);
    const metAtFirstCheck = observedOf(input, everFollowed, skill).filter((known) => {
      const start = firstEnrolmentDay(known.entry.person, input.settings.asOf);
      return known.attainment !== null && known.attainment.by > start && checksWithout(known).length === 0;
    }).length;
    const gained = own.filter((each) => each.by !== null).length;
    return { skill: skill.skill, children: own.length, metAtFirstCheck, gained };
  });
}

/** Days of the checks that came before any met. */
function checksWithout({ looks, attainment }: Known): string[] {
  return looks.map(({ date }) => date).filter((date) => attainment === null || date < attainment.by);
}

function observedOf(input: OracleInput, entries: readonly Entry[], skill: SkillRow): Known[] {
  return entries.map((entry) => knownOf(input, entry, skill)).filter((known) => known.looks.length > 0);
}

function knownOf(input: OracleInput, entry: Entry, skill: SkillRow): Known {
  const looks = looksOf(entry.person, skill.skill, input.settings.asOf);
  return { entry, looks, attainment: attainmentOf(looks, entry.person.birth) };
}

function isMetBy(input: OracleInput, { entry, attainment }: Known, skill: SkillRow, edge: number): boolean {
  if (attainment === null) return false;
  return isAtMost(ageMonths(entry.person, skill.ageBasis, input.settings, attainment.by), edge);
}

/** Birth is no look: a child who had the skill at the first look was never seen without it. */
function isNotMetBy(input: OracleInput, { entry, looks, attainment }: Known, skill: SkillRow, edge: number): boolean {
  const lastLook = looks[looks.length - 1]?.date;
  const lastWithout = attainment === null ? lastLook : attainment.hadAtFirstLook ? undefined : attainment.after;
  if (lastWithout === undefined) return false;
  return isAtLeast(ageMonths(entry.person, skill.ageBasis, input.settings, lastWithout), edge);
}

function middleOf(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const [low = 0, high = 0] = [sorted[Math.ceil(half) - 1], sorted[Math.floor(half)]];
  return (low + high) / 2;
}
