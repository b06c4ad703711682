import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Npmle, npmle } from "../../src/statistics/npmle";
import { randomFrom } from "../../src/statistics/random";
import { atMost, notRun, type Row, timesFaster } from "../row";
import { median, ROUNDS, timed } from "../timing";

const AIMS = [
  { n: 5_000, words: "5,000 children", aim: 25 },
  { n: 100_000, words: "100,000 children", aim: 60 },
];
const MOST_GAP = 1e-9;
const MOST_DIFFERENCE = 1e-7;

/** The interval-censored estimate against R's npsurv, which is there or is not. */
export async function againstNpsurv(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { n, words, aim } of AIMS) {
    const { after, by } = inventedIntervals(n);
    const ours = await timed(() => npmle(after, by), 9, 9);
    const theirs = npsurv(after, by);
    const compared = `The interval-censored estimate, against npsurv of R, ${words}`;
    rows.push(
      theirs === null
        ? notRun(compared, `at least ${aim} times`, "R with npsurv is not installed")
        : timesFaster(compared, ours.ms, theirs.ms, aim),
      gap(ours.result, words),
    );
    if (theirs !== null) rows.push(difference(ours.result, theirs.logLikelihood, words));
  }
  return rows;
}

function gap(estimate: Npmle, words: string): Row {
  const detail = `${estimate.iterations} rounds, ${words}`;
  return atMost(
    "the gap that bounds what the log-likelihood could still gain",
    estimate.largestGradient,
    MOST_GAP,
    "",
    detail,
  );
}

function difference(estimate: Npmle, theirs: number, words: string): Row {
  const detail = `${estimate.logLikelihood.toFixed(9)} against ${theirs.toFixed(9)}, ${words}`;
  const shortfall = Math.abs(theirs - estimate.logLikelihood);
  return atMost("the difference of the two log-likelihoods", shortfall, MOST_DIFFERENCE, "", detail);
}

/** Children looked at every 30 to 90 days or so until they are three; met at 400 days, give or take 90. */
function inventedIntervals(n: number): { after: Float64Array; by: Float64Array } {
  const random = randomFrom(20240229);
  const after = new Float64Array(n);
  const by = new Float64Array(n);
  for (let child = 0; child < n; child += 1) {
    const metAt = 400 + 90 * random.nextNormal();
    const last = 200 + random.nextInt(900);
    let look = random.nextInt(300);
    while (look < metAt && look < last) {
      after[child] = look;
      look += 30 + random.nextInt(61);
    }
    by[child] = look >= metAt ? Math.max(1, look) : Infinity;
  }
  return { after, by };
}

function npsurv(after: Float64Array, by: Float64Array): { ms: number; logLikelihood: number } | null {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const file = path.join(folder, "intervals.csv");
    const lines = Array.from(after, (each, child) => `${each},${by[child] === Infinity ? "Inf" : by[child]}\n`);
    writeFileSync(file, lines.join(""));
    const { status, stdout } = spawnSync("Rscript", ["bench/npsurv.R", file, String(ROUNDS)], { encoding: "utf8" });
    if (status !== 0) return null;
    const rounds = stdout
      .trim()
      .split("\n")
      .map((line) => line.split(" ").map(Number));
    return { ms: median(rounds.map(([seconds]) => seconds! * 1000)), logLikelihood: rounds[0]![1]! };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
