/** RESULTS.md: a section a part, which a new run of the part replaces. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";

const HEAD = `# What the tests do not see

Small wrong changes (a comparison, a sign, a bound, an order, a step left out), made one at a time in a copy of the source.
\`node tests/mutations/run.mjs PART N SEED\` writes a part of this file. A change that nothing notices is a test that is missing, or a change that
makes no difference: each is to be looked at.
`;

export function writeResult({ file, part, seed, seconds, outcomes, commit }) {
  const before = existsSync(file) ? readFileSync(file, "utf8") : HEAD;
  const sections = before.split(/^(?=## )/m).slice(1);
  const kept = sections.filter((section) => !section.startsWith(`## ${part}\n`));
  const all = [...kept, sectionOf({ part, seed, seconds, outcomes, commit })].sort();
  writeFileSync(file, [HEAD, ...all.map((section) => section.trimEnd() + "\n")].join("\n"));
}

function sectionOf({ part, seed, seconds, outcomes, commit }) {
  const count = (wanted) => outcomes.filter(({ outcome }) => outcome === wanted).length;
  const noticed = count("types") + count("tests");
  const date = new Date().toISOString().slice(0, 10);
  const machine = `${os.cpus().length} cores (${(os.cpus()[0]?.model ?? "unknown").trim()}), ${Math.round(os.totalmem() / 2 ** 30)} GB, ${os.type()}, Node ${process.version}`;
  return `## ${part}

Run on ${date} at ${commit}, seed ${seed}, at most ${seconds} s a change: ${machine}.

${outcomes.length} changes: ${noticed} noticed (${((100 * noticed) / outcomes.length).toFixed(0)}%), ${count("types")} by types and ${count("tests")} by tests; ${count("nothing")} not noticed; ${count("no time")} not noticed before the time was over.

${linesOf(outcomes)}`;
}

function linesOf(outcomes) {
  const missed = outcomes.filter(({ outcome }) => outcome === "nothing" || outcome === "no time");
  if (missed.length === 0) return "All were noticed.\n";
  const inOneLine = (text) => text.replace(/\s+/g, " ").replaceAll("|", "\\|").replaceAll("`", "'").slice(0, 80);
  const rows = missed.map(
    ({ file, line, kind, was, now, outcome }) =>
      `| ${file}:${line} | ${kind} | \`${inOneLine(was)}\` | \`${inOneLine(now) || " "}\` | ${outcome === "nothing" ? "all ran" : "time over"} |`,
  );
  return `| where | kind | was | became | related tests |\n| --- | --- | --- | --- | --- |\n${rows.join("\n")}\n`;
}
