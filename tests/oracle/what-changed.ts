/**
 * Why the counts of met-by-band changed, from METHOD.md alone: slow, a child, a skill and a step at a time, on the rows as
 * they were typed. Shares no code with the program.
 */
import { ageMonths, bandOf } from "./ages";
import { boxAt, type Box } from "./attainment";
import { enrolmentInForce, peopleOf, type Person } from "./following";
import type { ObservationRow, OracleInput, SkillRow } from "./input";

export const PARTS = [
  "enteredLate",
  "corrected",
  "removed",
  "definition",
  "joined",
  "left",
  "grewIn",
  "grewOut",
  "metSince",
  "lost",
  "needsRecheck",
  "checkedAgain",
] as const;
type Part = (typeof PARTS)[number];
const MEASURES = ["children", "assessed", "met"] as const;
type Measure = (typeof MEASURES)[number];

export type ChangedRow = { key: string; earlier: number; later: number } & Record<Part, number>;

/** Where a child stands with a skill: its group, its cell of the table, its box. */
interface Stand {
  readonly group: string | null;
  readonly cell: string | null;
  readonly box: Box;
}

interface Snapshot {
  readonly input: OracleInput;
  readonly people: ReadonlyMap<string, Person>;
}

export function whatChanged(earlier: OracleInput, later: OracleInput): ChangedRow[] {
  const day = earlier.settings.asOf;
  const columns = [...new Set([...later.settings.by, ...earlier.settings.by])];
  const a = snapshot(earlier);
  const b = snapshot({ ...later, skills: earlier.skills, settings: earlier.settings });
  const c = snapshot({ ...later, settings: { ...later.settings, asOf: day } });
  const d = snapshot(later);
  const rows = new Map<string, ChangedRow>();
  const rowOf = (cell: string, measure: Measure): ChangedRow => {
    const key = `${cell} | ${measure}`;
    const zeros = Object.fromEntries(PARTS.map((part) => [part, 0])) as Record<Part, number>;
    const row = rows.get(key) ?? { key, earlier: 0, later: 0, ...zeros };
    rows.set(key, row);
    return row;
  };
  const children = new Set([...a.people.keys(), ...d.people.keys(), ...b.people.keys(), ...c.people.keys()]);
  const skills = new Set([...earlier.skills, ...later.skills].map(({ skill }) => skill));
  for (const child of children) {
    for (const skill of skills) {
      const stands = [a, b, c, d].map((each) => standOf(each, columns, child, skill));
      const [inA, inB, inC, inD] = stands as [Stand | null, Stand | null, Stand | null, Stand | null];
      for (const measure of MEASURES) {
        if (counts(inA, measure)) rowOf(inA!.cell!, measure).earlier += 1;
        if (counts(inD, measure)) rowOf(inD!.cell!, measure).later += 1;
        for (const [from, to, cause] of [
          [inA, inB, () => rowCause(a, b, child, skill, inA, inB, measure)],
          [inB, inC, () => "definition"],
          [inC, inD, (atEnd: boolean) => timeCause(inC, inD, atEnd)],
        ] as [Stand | null, Stand | null, (atEnd: boolean) => Part][]) {
          if (counts(from, measure) && counts(to, measure) && from!.cell === to!.cell) continue;
          if (counts(from, measure)) rowOf(from!.cell!, measure)[cause(false)] -= 1;
          if (counts(to, measure)) rowOf(to!.cell!, measure)[cause(true)] += 1;
        }
      }
    }
  }
  return withAreas([...rows.values()]);
}

/** Cells that hold nobody in either report are none of its rows. */
function withAreas(rows: readonly ChangedRow[]): ChangedRow[] {
  const cellOf = (key: string) => key.slice(0, key.lastIndexOf(" | "));
  const shown = new Set(
    rows
      .filter(({ key, earlier, later }) => key.endsWith("children") && earlier + later > 0)
      .map(({ key }) => cellOf(key)),
  );
  const own = [...shown].flatMap((cell) =>
    MEASURES.map((measure) => {
      const key = `${cell} | ${measure}`;
      const zeros = Object.fromEntries(PARTS.map((part) => [part, 0])) as Record<Part, number>;
      return rows.find((row) => row.key === key) ?? { key, earlier: 0, later: 0, ...zeros };
    }),
  );
  const sums = new Map<string, ChangedRow>();
  for (const row of own) {
    const [group, , area, band, measure] = row.key.split(" | ") as [string, string, string, string, string];
    const key = [group, "all", area, band, measure].join(" | ");
    const sum = sums.get(key);
    if (sum === undefined) sums.set(key, { ...row, key });
    else for (const name of [...PARTS, "earlier", "later"] as const) sum[name] += row[name];
  }
  return [...own, ...sums.values()];
}

function snapshot(input: OracleInput): Snapshot {
  const people = peopleOf(input).filter(({ birth }) => birth <= input.settings.asOf);
  return { input, people: new Map(people.map((person) => [person.id, person])) };
}

function standOf({ input, people }: Snapshot, columns: readonly string[], child: string, id: string): Stand | null {
  const { asOf, by, edges } = input.settings;
  const person = people.get(child);
  const skill = input.skills.find((each) => each.skill === id);
  if (person === undefined || skill === undefined) return null;
  const enrolment = enrolmentInForce(person, asOf);
  const box = boxAt(input, person, skill, asOf);
  if (enrolment === null) return { group: null, cell: null, box };
  const texts = columns.map((name) => (by.includes(name) ? enrolment[name as "Site" | "Therapist"] : "(none)"));
  const band = bandOf(ageMonths(person, skill.ageBasis, input.settings, asOf), edges);
  const group = texts.join(", ");
  return { group, cell: [group, skill.skill, skill.area, band].join(" | "), box };
}

function counts(stand: Stand | null, measure: Measure): boolean {
  if (stand === null || stand.cell === null) return false;
  if (measure === "met") return stand.box === "had at first look" || stand.box === "gained here";
  return measure === "children" || !(stand.box === "out of date" || stand.box === "not assessed");
}

/** Last step. A child that is in another group left the one and joined the other. */
function timeCause(from: Stand | null, to: Stand | null, atEnd: boolean): Part {
  if ((from?.group ?? null) !== (to?.group ?? null)) return atEnd ? "joined" : "left";
  if (from?.cell !== to?.cell) return atEnd ? "grewIn" : "grewOut";
  switch (to?.box) {
    case "had at first look":
    case "gained here":
      return "metSince";
    case "lost":
      return "lost";
    case "out of date":
      return "needsRecheck";
    default:
      return "checkedAgain";
  }
}

/** First step: everything that differs and that the count hangs on; the first of the order is the cause. */
function rowCause(
  a: Snapshot,
  b: Snapshot,
  child: string,
  skill: string,
  inA: Stand | null,
  inB: Stand | null,
  measure: Measure,
): Part {
  const found = new Set<Part>();
  if ((inA?.cell ?? null) !== (inB?.cell ?? null))
    ownDifferences(a, b, child, skill).forEach((part) => found.add(part));
  if (measure !== "children" && inA?.box !== inB?.box) {
    const own = checkDifferences(a, b, child, [skill]);
    const all = own.size > 0 ? own : checkDifferences(a, b, child, followersOf(a.input.skills, skill));
    all.forEach((part) => found.add(part));
  }
  return PARTS.find((part) => found.has(part)) ?? "corrected";
}

function followersOf(skills: readonly SkillRow[], skill: string): string[] {
  return skills
    .filter(({ follows }) => follows === skill)
    .flatMap((each) => [each.skill, ...followersOf(skills, each.skill)]);
}

function ownDifferences(a: Snapshot, b: Snapshot, child: string, skill: string): Set<Part> {
  const found = new Set<Part>();
  const [before, now] = [a.people.get(child), b.people.get(child)];
  if (before === undefined) return found.add("enteredLate");
  if (now === undefined) return found.add("removed");
  const { asOf, by } = a.input.settings;
  cellDifference(before.birth, now.birth, found);
  if (a.input.skills.find((each) => each.skill === skill)?.ageBasis !== "chronological") {
    cellDifference(before.gestation, now.gestation, found);
  }
  const rowsOf = (person: Person) =>
    person.enrolments
      .filter(({ enrolled }) => enrolled <= asOf)
      .map((row) => ({
        day: row.enrolled,
        cells: [
          row.enrolled,
          row.left !== null && row.left <= asOf ? row.left : null,
          ...by.map((name) => row[name as "Site" | "Therapist"] || null),
        ],
      }));
  const matched = matchRows(rowsOf(before), rowsOf(now), (row) => JSON.stringify(row.cells));
  for (const [old, fresh] of matched.pairs) {
    old.cells.forEach((cell, at) => cellDifference(cell, fresh.cells[at] ?? null, found));
  }
  if (matched.gone > 0) found.add("removed");
  if (matched.fresh > 0) found.add("enteredLate");
  return found;
}

function cellDifference(before: string | number | null, now: string | number | null, found: Set<Part>): void {
  if (before === now) return;
  if (before === null) found.add("enteredLate");
  else if (now === null) found.add("removed");
  else found.add("corrected");
}

function checkDifferences(a: Snapshot, b: Snapshot, child: string, skills: readonly string[]): Set<Part> {
  const found = new Set<Part>();
  for (const skill of skills) {
    const rowsOf = ({ people }: Snapshot) =>
      distinct(people.get(child)?.observations.filter((row) => row.skill === skill) ?? []);
    const day = a.input.settings.asOf;
    const before = rowsOf(a).filter(({ date }) => date <= day);
    const now = rowsOf(b).filter(({ date }) => date <= day);
    const dated = (rows: readonly ObservationRow[]) =>
      rows.map(({ date, result }) => ({ day: date, cells: [date, result] }));
    const matched = matchRows(dated(before), dated(now), (row) => JSON.stringify(row.cells));
    if (matched.pairs.some(([old, fresh]) => JSON.stringify(old.cells) !== JSON.stringify(fresh.cells)))
      found.add("corrected");
    if (matched.gone > 0) found.add("removed");
    if (matched.fresh > 0) found.add("enteredLate");
  }
  return found;
}

/** An exact copy of a row is used once. */
function distinct(rows: readonly ObservationRow[]): ObservationRow[] {
  const seen = new Map(
    rows.map((row) => [JSON.stringify([row.date, row.result, row.observer ?? null, row.entered ?? null]), row]),
  );
  return [...seen.values()];
}

interface Dated {
  readonly day: string;
  readonly cells: readonly (string | null)[];
}

/** The same rows first, then rows of the same day, then in order of date. */
function matchRows(before: readonly Dated[], now: readonly Dated[], wholeOf: (row: Dated) => string) {
  const pairs: [Dated, Dated][] = [];
  let [gone, fresh] = [[...before], [...now]];
  for (const keyOf of [wholeOf, (row: Dated) => row.day]) {
    for (const row of [...gone]) {
      const other = fresh.find((each) => keyOf(each) === keyOf(row));
      if (other === undefined) continue;
      pairs.push([row, other]);
      gone = gone.filter((each) => each !== row);
      fresh = fresh.filter((each) => each !== other);
    }
  }
  const byDay = (x: Dated, y: Dated) => (x.day < y.day ? -1 : x.day > y.day ? 1 : 0);
  gone.sort(byDay);
  fresh.sort(byDay);
  while (gone.length > 0 && fresh.length > 0) pairs.push([gone.shift() as Dated, fresh.shift() as Dated]);
  return { pairs, gone: gone.length, fresh: fresh.length };
}
