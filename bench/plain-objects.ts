import { isoOf } from "../src/age/day";
import { RESULT_LABELS } from "../src/records/records";
import { EDGES, type Invented, SKILL_COUNT } from "./observations";

/** The same jobs as an ordinary developer writes them: an object a row, Map, Set and Date. */
export interface PlainRow {
  readonly child: string;
  readonly skill: string;
  readonly date: Date;
  readonly result: string;
}

export interface PlainChild {
  readonly birth: Date;
  readonly gestationDays: number | null;
}

export interface PlainProgram {
  readonly children: Map<string, PlainChild>;
  readonly rows: readonly PlainRow[];
}

const MS_PER_DAY = 86_400_000;

export function plainProgram({ observations, birth, gestationDays }: Invented): PlainProgram {
  const { child, skill, day, result } = observations;
  const children = new Map<string, PlainChild>();
  birth.forEach((born, index) =>
    children.set(`C${index + 1}`, { birth: dateOf(born), gestationDays: gestationDays[index] || null }),
  );
  const rows = Array.from(child, (who, row) => ({
    child: `C${who + 1}`,
    skill: `S${skill[row]! + 1}`,
    date: dateOf(day[row]!),
    result: RESULT_LABELS[result[row]!]!,
  }));
  return { children, rows };
}

function dateOf(day: number): Date {
  return new Date(isoOf(day));
}

function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
}

function addMonths(date: Date, months: number): Date {
  const first = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + months, 1));
  const last = daysInMonth(first.getUTCFullYear(), first.getUTCMonth());
  first.setUTCDate(Math.min(date.getUTCDate(), last));
  return first;
}

function completedMonths(from: Date, to: Date): number {
  const months = (to.getUTCFullYear() - from.getUTCFullYear()) * 12 + to.getUTCMonth() - from.getUTCMonth();
  const birthday = Math.min(from.getUTCDate(), daysInMonth(to.getUTCFullYear(), to.getUTCMonth()));
  return to.getUTCDate() >= birthday ? months : months - 1;
}

function ageInMonths(child: PlainChild, on: Date): number {
  const { birth, gestationDays } = child;
  if (gestationDays !== null && gestationDays < 259 && on < addMonths(birth, 24)) {
    return completedMonths(new Date(birth.getTime() + (280 - gestationDays) * MS_PER_DAY), on);
  }
  return completedMonths(birth, on);
}

function bandOf(months: number): number {
  const band = EDGES.findIndex((edge) => months < edge);
  return band === -1 ? EDGES.length : band;
}

/** Different children seen and met, by skill and band, in the order of our own result. */
export function plainChildCounts({ children, rows }: PlainProgram): { seen: number[]; met: number[] } {
  const groups = new Map<string, { seen: Set<string>; met: Set<string> }>();
  for (const row of rows) {
    const key = `${row.skill}|${bandOf(ageInMonths(children.get(row.child)!, row.date))}`;
    let group = groups.get(key);
    if (!group) groups.set(key, (group = { seen: new Set(), met: new Set() }));
    group.seen.add(row.child);
    if (row.result === "met") group.met.add(row.child);
  }
  const cells = Array.from({ length: SKILL_COUNT * (EDGES.length + 1) }, (_, cell) => {
    const band = cell % (EDGES.length + 1);
    return groups.get(`S${(cell - band) / (EDGES.length + 1) + 1}|${band}`);
  });
  return { seen: cells.map((each) => each?.seen.size ?? 0), met: cells.map((each) => each?.met.size ?? 0) };
}

export interface PlainInterval {
  readonly after: Date | null;
  readonly by: Date | null;
}

/** The interval in which each child met each skill. No child is looked at twice for a skill on one day here. */
export function plainIntervals({ rows }: PlainProgram): Map<string, PlainInterval> {
  const byChildAndSkill = new Map<string, PlainRow[]>();
  for (const row of rows) {
    const key = `${row.child}|${row.skill}`;
    const group = byChildAndSkill.get(key);
    if (group) group.push(row);
    else byChildAndSkill.set(key, [row]);
  }
  const intervals = new Map<string, PlainInterval>();
  for (const [key, group] of byChildAndSkill) {
    group.sort((a, b) => a.date.getTime() - b.date.getTime());
    const first = group.findIndex((row) => row.result === "met" || row.result === "lost");
    const last = first === -1 ? group[group.length - 1] : group[first - 1];
    intervals.set(key, { after: last?.date ?? null, by: group[first]?.date ?? null });
  }
  return intervals;
}
