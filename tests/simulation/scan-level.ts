/**
 * How often the scan calls a cluster where there is none, and how often it finds the planted one of the invented program.
 * Run by hand: node tests/simulation/run.mjs [programs] [samples]. Writes tests/simulation/RESULTS.md.
 */
import { writeFileSync } from "node:fs";
import os from "node:os";
import { binomialAtMost } from "../../src/statistics/distributions";
import { shareInterval } from "../../src/statistics/share";
import { referralScan } from "../../src/tables/referral-scan";
import { nullProgram } from "./null-program";
import { sampleContext } from "./sample-context";

const FILE = "tests/simulation/RESULTS.md";
const LEVEL = 0.05;
const USUAL = { children: 240, sites: 3, scanMonths: 24 };
const P_COLUMN = 8;

const [programs = 2000, samples = 100] = process.argv.slice(2).map(Number);

const called = countOf(programs, (seed) => pOf(nullProgram(seed, USUAL)) <= LEVEL);
const most = mostByChance(programs);
const { from, found, exact } = plantedFound(samples);
writeFileSync(FILE, report());
process.exitCode = called <= most ? 0 : 1;

function countOf(runs: number, is: (seed: number) => boolean): number {
  let count = 0;
  for (let seed = 1; seed <= runs; seed += 1) {
    if (is(seed)) count += 1;
    if (seed % 100 === 0) console.error(`${seed} of ${runs}: ${count}`);
  }
  return count;
}

function pOf(context: ReturnType<typeof nullProgram>): number {
  return Number(referralScan(context).rows[0]?.[P_COLUMN] ?? 1);
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
  const { lower, upper } = shareInterval(called, programs, 0.95, "exact");
  const memory = Math.round(os.totalmem() / 2 ** 30);
  return [
    "# How often the scan of referrals calls a cluster",
    "",
    `Run on ${new Date().toISOString().slice(0, 10)}: ${os.cpus().length} cores (${os.cpus()[0]?.model ?? "unknown"}), ${memory} GB, ${os.type()}, Node ${process.version}. \`node tests/simulation/run.mjs ${programs} ${samples}\` writes this file.`,
    "",
    `- Nothing clusters: ${called} of ${programs} invented programs had a window with p of ${LEVEL} or less (${((100 * called) / programs).toFixed(2)}%, exact 95% limits ${(100 * (lower ?? 0)).toFixed(2)}% to ${(100 * (upper ?? 0)).toFixed(2)}%). By chance alone up to ${most} are to be expected (97.5% of a binomial count with 5%).`,
    `- The planted cluster of the sample program (speech, River, three months), drawn with ${from} seeds: found with p of ${LEVEL} or less in ${found}, with its very months and area in ${exact}.`,
    "",
    `Programs of ${USUAL.children} children, ${USUAL.sites} sites, ${USUAL.scanMonths} months, 999 replicates each; seeds 1 upwards.`,
    "",
  ].join("\n");
}
