/**
 * Releases of invented programs, judged by somebody who has their files and the definitions: no small count may be proved.
 * Run by hand: node tests/simulation/run.mjs outsider [programs] [first]. Writes tests/simulation/OUTSIDER.md.
 */
import { writeFileSync } from "node:fs";
import os from "node:os";
import loadHighs, { type Highs } from "highs";
import { highsSolver } from "../../src/release/highs-solver";
import { attack, holdsFor } from "../release/outsider/attack";
import { caseOf, outsiderOf } from "../release/outsider/cases";

const FILE = "tests/simulation/OUTSIDER.md";
const [programs = 300, first = 0] = process.argv.slice(2).map(Number);

interface Judged {
  readonly name: string;
  readonly released: number;
  readonly refused: number;
  readonly small: number;
  readonly proved: readonly string[];
}

async function main(): Promise<void> {
  const highs = await loadHighs();
  const judged: Judged[] = [];
  for (let seed = first; seed < first + programs; seed += 1) {
    judged.push(await judge(seed, highs));
    // a run that is ended keeps what it found
    if (programs >= 100) writeFileSync(FILE, page(judged));
  }
  process.exitCode = judged.some(({ proved }) => proved.length > 0) ? 1 : 0;
}

async function judge(seed: number, highs: Highs): Promise<Judged> {
  const own = caseOf(seed);
  const { sheets, truths, refused } = await outsiderOf(own, highsSolver(highs));
  const how = { skills: own.skills, minimum: own.minimum, highs };
  if (sheets.length > 0 && !holdsFor(truths, how))
    throw new Error(`${seed}: the truth is not possible to the outsider`);
  const { small, proved } = attack(sheets, truths, how);
  const released = own.asks.length - refused;
  console.error(
    `${seed} ${own.name}, ${own.size} children: ${released} released, ${refused} refused, ${small} small, ${proved.length} proved`,
  );
  proved.forEach((name) => console.error(`  ${name}`));
  return { name: own.name, released, refused, small, proved };
}

function page(judged: readonly Judged[]): string {
  const rows = [...new Set(judged.map(({ name }) => name))].map((name) => {
    const own = judged.filter((each) => each.name === name);
    const sum = (of: (each: Judged) => number) => own.reduce((total, each) => total + of(each), 0);
    const counts = [own.length, sum((each) => each.released), sum((each) => each.refused), sum((each) => each.small)];
    return `| ${[name, ...counts, sum((each) => each.proved.length)].join(" | ")} |`;
  });
  return [
    "# What an outsider can prove from released files",
    "",
    `Run on ${new Date().toISOString().slice(0, 10)}: ${os.cpus().length} cores (${os.cpus()[0]?.model ?? "unknown"}), ${os.type()}, Node ${process.version}. \`node tests/simulation/run.mjs outsider ${programs} ${first}\` writes this file.`,
    "",
    `${judged.length} invented programs of 40 to 240 children, minimum 5, 10 or 11. An outsider who has the CSV files and the definitions of src/METHOD.md, and shares no code with the release, tries to prove every truly small count: printed ones, what rows leave over, totals, and what lies between tables.`,
    "",
    "| releases | programs | released | refused | small counts | proved |",
    "| --- | --- | --- | --- | --- | --- |",
    ...rows,
    "",
  ].join("\n");
}

void main();
