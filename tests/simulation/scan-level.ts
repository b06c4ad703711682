/**
 * How often the scan calls a cluster where there is none, and how often it finds the planted one of the invented program.
 * Run by hand: node tests/simulation/run.mjs [programs] [samples]. Writes tests/simulation/RESULTS.md.
 */
import { writeFileSync } from "node:fs";
import os from "node:os";
import { binomialAtMost } from "../../src/statistics/distributions";
import { shareInterval } from "../../src/statistics/share";
import { referralScan } from "../../src/tables/referral-scan";
import { type NullOptions, nullProgram } from "./null-program";
import { sampleContext } from "./sample-context";

const FILE = "tests/simulation/RESULTS.md";
const LEVEL = 0.05;
const USUAL = { children: 240, sites: 3, scanMonths: 24 };
/** Four times as many referrals in March to May of each year, at every site alike. */
const SEASONAL = { ...USUAL, season: 4 };
const P_COLUMNS = { p: 8, pSameMonths: 9 } as const;

const [programs = 2000, samples = 100] = process.argv.slice(2).map(Number);

const usual = callsOf(programs, USUAL);
const seasonal = callsOf(programs, SEASONAL);
const most = mostByChance(programs);
const { from, found, exact } = plantedFound(samples);
writeFileSync(FILE, report());
process.exitCode = Math.max(usual.p, usual.pSameMonths, seasonal.pSameMonths) <= most ? 0 : 1;

/** How many programs have a window that each of the two p calls a cluster. */
function callsOf(runs: number, options: NullOptions): Record<keyof typeof P_COLUMNS, number> {
  const calls = { p: 0, pSameMonths: 0 };
  for (let seed = 1; seed <= runs; seed += 1) {
    const { rows } = referralScan(nullProgram(seed, options));
    for (const key of ["p", "pSameMonths"] as const) {
      if (rows.some((row) => Number(row[P_COLUMNS[key]]) <= LEVEL)) calls[key] += 1;
    }
    if (seed % 100 === 0) console.error(`${seed} of ${runs}: ${calls.p}, ${calls.pSameMonths}`);
  }
  return calls;
}

/** The largest count that 97.5% of runs stay at or under where 5% is true. */
function mostByChance(runs: number): number {
  let most = 0;
  while (binomialAtMost(most, runs, LEVEL) < 0.975) most += 1;
  return most;
}

function plantedFound(runs: number) {
  let [hits, sharp] = [0, 0];
  for (let seed = 1; seed <= runs; seed += 1) {
    const { context, cluster } = sampleContext(seed);
    const [place, area, firstMonth, lastMonth, , , , , p] = referralScan(context).rows[0] ?? [];
    const isThere = place === cluster.site && (area === cluster.area || area === "all") && Number(p) <= LEVEL;
    const touches = String(firstMonth) <= cluster.lastMonth && String(lastMonth) >= cluster.firstMonth;
    if (isThere && touches) hits += 1;
    if (isThere && area === cluster.area && firstMonth === cluster.firstMonth && lastMonth === cluster.lastMonth)
      sharp += 1;
  }
  return { from: runs, found: hits, exact: sharp };
}

function report(): string {
  const memory = Math.round(os.totalmem() / 2 ** 30);
  return [
    "# How often the scan of referrals calls a cluster",
    "",
    `Run on ${new Date().toISOString().slice(0, 10)}: ${os.cpus().length} cores (${os.cpus()[0]?.model ?? "unknown"}), ${memory} GB, ${os.type()}, Node ${process.version}. \`node tests/simulation/run.mjs ${programs} ${samples}\` writes this file.`,
    "",
    `Of ${programs} invented programs without a cluster, how many had a window with a p of ${LEVEL} or less. By chance alone up to ${most} are to be expected (97.5% of a binomial count with 5%).`,
    "",
    "| program | p | pSameMonths |",
    "| --- | --- | --- |",
    `| no season | ${called(usual.p)} | ${called(usual.pSameMonths)} |`,
    `| ${SEASONAL.season} times as many referrals in March to May, at every site alike | ${called(seasonal.p)} | ${called(seasonal.pSameMonths)} |`,
    "",
    `- The planted cluster of the sample program (speech, River, three months), drawn with ${from} seeds: found with p of ${LEVEL} or less in ${found}, with its very months and area in ${exact}.`,
    "",
    `Programs of ${USUAL.children} children, ${USUAL.sites} sites, ${USUAL.scanMonths} months, 999 replicates each; seeds 1 upwards.`,
    "",
  ].join("\n");
}

/** `97 (4.85%, exact 95% limits 3.95% to 5.88%)`. */
function called(count: number): string {
  const { lower, upper } = shareInterval(count, programs, 0.95, "exact");
  const percent = (share: number | null) => `${(100 * (share ?? 0)).toFixed(2)}%`;
  return `${count} (${percent(count / programs)}, exact 95% limits ${percent(lower)} to ${percent(upper)})`;
}
