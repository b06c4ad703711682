import { dayFromIso } from "../../src/age/day";
import type { ChildCounts } from "../../src/cohort/looks-by-band";
import type { Attainment } from "../../src/cohort/state";
import { NO_DAY } from "../../src/records/records";
import { idsOf, inventedObservations, SKILL_COUNT } from "../observations";
import { ourChildCounts, ourIntervals } from "../ours";
import { plainChildCounts, type PlainInterval, plainIntervals, plainProgram } from "../plain-objects";
import { type Row, same, timesFaster } from "../row";
import { timed } from "../timing";

const AIMS = [
  { rowCount: 100_000, words: "100,000 rows", aim: 20 },
  { rowCount: 1_000_000, words: "a million rows", aim: 40 },
];

export async function againstPlainObjects(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { rowCount, words, aim } of AIMS) rows.push(...(await atSize(rowCount, words, aim)));
  return rows;
}

async function atSize(rowCount: number, words: string, aim: number): Promise<Row[]> {
  const invented = inventedObservations(rowCount);
  const ids = idsOf(invented);
  const plain = plainProgram(invented);
  const counts = await timed(() => ourChildCounts(invented, ids), 15, 15);
  const plainCounts = await timed(() => plainChildCounts(plain));
  const intervals = await timed(() => ourIntervals(invented, ids), 15, 15);
  const plainOnes = await timed(() => plainIntervals(plain));
  const against = `against plain objects, Map and Date, ${words}`;
  return [
    timesFaster(`Children seen and met by skill and band, ${against}`, counts.ms, plainCounts.ms, aim),
    same("every cell of these counts", sameCounts(counts.result, plainCounts.result), words),
    timesFaster(`The interval in which each skill was met, ${against}`, intervals.ms, plainOnes.ms, aim),
    same("every one of these intervals", sameIntervals(intervals.result, plainOnes.result), words),
  ];
}

function sameCounts(ours: ChildCounts, theirs: { seen: number[]; met: number[] }): boolean {
  return (
    ours.childrenSeen.every((count, cell) => count === theirs.seen[cell]) &&
    ours.childrenMet.every((count, cell) => count === theirs.met[cell]) &&
    theirs.seen.some((count) => count > 0)
  );
}

function sameIntervals(ours: Attainment, theirs: Map<string, PlainInterval>): boolean {
  let seen = 0;
  for (let cell = 0; cell < ours.metDay.length; cell += 1) {
    if (ours.lastLook[cell] === NO_DAY) continue;
    const skill = cell % SKILL_COUNT;
    const interval = theirs.get(`C${(cell - skill) / SKILL_COUNT + 1}|S${skill + 1}`);
    if (!interval || dayOfDate(interval.by) !== ours.metDay[cell]) return false;
    if (dayOfDate(interval.after) !== ours.withoutDay[cell]) return false;
    seen += 1;
  }
  return seen === theirs.size && seen > 0;
}

function dayOfDate(date: Date | null): number {
  return date === null ? NO_DAY : dayFromIso(date.toISOString().slice(0, 10))!;
}
