import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { ChildCounts } from "../../src/cohort/looks-by-band";
import type { Attainment } from "../../src/cohort/state";
import { NO_DAY } from "../../src/records/records";
import { connectDuckDb, type Connection, loadInto, THREADS } from "../duckdb";
import { EDGES, idsOf, type Invented, inventedObservations, SKILL_COUNT } from "../observations";
import { ourChildCounts, ourIntervals } from "../ours";
import { notRun, type Row, same, timesFaster } from "../row";
import { timed } from "../timing";

const ROWS = 10_000_000;
const AIM = 1.5;
const COUNTS = `Children seen and met by skill and band, against DuckDB with ${THREADS} threads, ten million rows`;
const INTERVALS = `The interval in which each skill was met, against DuckDB with ${THREADS} threads, ten million rows`;

export async function againstDuckDb(): Promise<Row[]> {
  const connection = await connectDuckDb();
  if (connection === null) {
    return [COUNTS, INTERVALS].map((words) => notRun(words, `at least ${AIM} times`, "DuckDB is not installed"));
  }
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const invented = inventedObservations(ROWS);
    await loadInto(connection, invented, folder);
    return await compare(connection, invented);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compare(connection: Connection, invented: Invented): Promise<Row[]> {
  const ids = idsOf(invented);
  const counts = await timed(() => ourChildCounts(invented, ids));
  const theirCounts = await timed(() => connection.run(CHILD_COUNTS));
  const intervals = await timed(() => ourIntervals(invented, ids));
  const theirIntervals = await timed(() => connection.run(MET_BETWEEN));
  return [
    timesFaster(COUNTS, counts.ms, theirCounts.ms, AIM),
    same("every cell of these counts", await sameCounts(connection, counts.result), "ten million rows"),
    timesFaster(INTERVALS, intervals.ms, theirIntervals.ms, AIM),
    same("every one of these intervals", await sameIntervals(connection, intervals.result), "ten million rows"),
  ];
}

/**
 * The fastest of four ways tried: one row a child, skill and band, then counted. `datesub` clamps month ends, as we do, but cuts
 * a negative age towards zero.
 */
const BAND = `CASE ${EDGES.map((edge, band) => `WHEN months < ${edge} THEN ${band}`).join(" ")} ELSE ${EDGES.length} END`;
const CHILD_COUNTS = `CREATE OR REPLACE TEMP TABLE counts AS
  WITH ages AS (
    SELECT o.child, skill, result,
      CASE WHEN day >= stops THEN datesub('month', birth, day) WHEN day < due THEN -1 ELSE datesub('month', due, day) END AS months
    FROM observations o JOIN children USING (child)
  ), seen AS (SELECT child, skill, ${BAND} AS band, max(result = 2) AS met FROM ages GROUP BY ALL)
  SELECT skill, band, count(*)::INTEGER AS seen, (count(*) FILTER (met))::INTEGER AS met FROM seen GROUP BY ALL`;

/** The fastest of three ways tried: the looks without the skill as a list, cut at the day it was met. */
const MET_BETWEEN = `CREATE OR REPLACE TEMP TABLE intervals AS
  WITH each AS (
    SELECT child, skill, min(day) FILTER (result >= 2) AS met_by, list(day) FILTER (result < 2) AS without
    FROM observations GROUP BY ALL
  )
  SELECT child, skill, met_by,
    CASE WHEN met_by IS NULL THEN list_max(without) ELSE list_max(list_filter(without, lambda d: d < met_by)) END AS after
  FROM each`;

async function sameCounts(connection: Connection, ours: ChildCounts): Promise<boolean> {
  const columns = (await connection.runAndReadAll("SELECT skill, band, seen, met FROM counts")).getColumns();
  const [skill = [], band = [], seen = [], met = []] = columns as number[][];
  const filled = ours.childrenSeen.filter((count) => count > 0).length;
  return (
    skill.length === filled &&
    skill.every((_, row) => {
      const cell = skill[row]! * ours.bandCount + band[row]!;
      return ours.childrenSeen[cell] === seen[row] && ours.childrenMet[cell] === met[row];
    })
  );
}

const DAYS = "(met_by - DATE '1970-01-01')::INTEGER, (after - DATE '1970-01-01')::INTEGER";

async function sameIntervals(connection: Connection, ours: Attainment): Promise<boolean> {
  let rows = 0;
  for (let skill = 0; skill < SKILL_COUNT; skill += 1) {
    const sql = `SELECT child, ${DAYS} FROM intervals WHERE skill = ${skill}`;
    const [child = [], by = [], after = []] = (await connection.runAndReadAll(sql)).getColumns() as (number | null)[][];
    for (let row = 0; row < child.length; row += 1) {
      const cell = child[row]! * SKILL_COUNT + skill;
      if (ours.metDay[cell] !== (by[row] ?? NO_DAY) || ours.withoutDay[cell] !== (after[row] ?? NO_DAY)) return false;
    }
    rows += child.length;
  }
  return rows === ours.lastLook.filter((day) => day !== NO_DAY).length;
}
