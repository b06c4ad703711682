/**
 * How many small wrong changes the tests notice. Run by hand, since a change takes up to minutes:
 *
 *     node tests/mutations/run.mjs PART N [SEED] [--seconds 240]
 *
 * PART is one of the parts below or a folder. N changes are drawn, made one at a time in a copy of the last commit, and
 * given to the types and to the tests that import the changed file, the nearest first, each change for so many seconds
 * at most. RESULTS.md gets the part's numbers, and every change that nothing noticed. The tree itself is never changed:
 * whoever stops this leaves no change behind.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { changed, changesIn } from "./changes.mjs";
import { writeResult } from "./results.mjs";
import { typeCheckOf } from "./types.mjs";

const PARTS = {
  core: ["age", "statistics", "settings", "cohort", "tables", "records", "release"].map((name) => `src/${name}/`),
  report: ["src/report/"],
  file: ["src/hosts/file/write/"],
  worker: ["taskpane/worker/"],
};

const TESTS_A_RUN = 8;

/** Those that run what was built cannot see a change of the source. */
const OF_WHAT_IS_BUILT = /^tests\/(browser|cli|witness)\//;

/** jest follows imports only where it is told to look; package.json names the tests alone. */
const ROOTS = ["--roots", "tests", "src", "functions", "taskpane"];

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seconds: { type: "string", default: "240" } },
});
const [part = "", count = "", seed = "1"] = positionals;
const folders = PARTS[part] ?? (existsSync(path.join(root, part)) && part.includes("/") ? [part] : null);
if (!folders || !(Number(count) > 0)) {
  console.error(
    `run.mjs PART N [SEED]: PART is ${Object.keys(PARTS).join(", ")} or a folder; N is a number of changes.`,
  );
  process.exit(2);
}

const git = (...words) => execFileSync("git", words, { cwd: root, encoding: "utf8" }).trim();
const copy = path.join(mkdtempSync(path.join(os.tmpdir(), "windowline-changes-")), "copy");
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => process.exit(1));
process.on("exit", removeCopy);

git("worktree", "prune");
git("worktree", "add", "--detach", "--quiet", copy, "HEAD");
for (const name of ["node_modules", "dist"]) {
  if (existsSync(path.join(root, name))) symlinkSync(path.join(root, name), path.join(copy, name), "dir");
}

const drawn = drawnChanges(Number(count));
const fits = typeCheckOf(copy);
const outcomes = drawn.map((change, at) => {
  const outcome = outcomeOf(change);
  console.log(`${at + 1} of ${drawn.length}: ${outcome}: ${change.file}:${change.line} ${change.kind}`);
  return { ...change, outcome };
});
writeResult({
  ...{ part, seed, seconds: values.seconds, outcomes, commit: git("rev-parse", "--short", "HEAD") },
  file: path.join(root, "tests/mutations/RESULTS.md"),
});

function drawnChanges(wanted) {
  const files = git("ls-files", ...folders).split("\n");
  const all = files
    .filter((file) => /\.tsx?$/.test(file) && !file.endsWith(".d.ts"))
    .flatMap((file) => {
      const text = readFileSync(path.join(copy, file), "utf8");
      return changesIn(text, file).map((change) => ({ ...change, file, text }));
    });
  const random = randomFrom(Number(seed));
  for (let at = all.length - 1; at > 0; at -= 1) {
    const other = Math.floor(random() * (at + 1));
    [all[at], all[other]] = [all[other], all[at]];
  }
  return all.slice(0, wanted);
}

/** `types`, `tests`, `nothing`, or `no time` where the seconds were over before all related tests had run. */
function outcomeOf(change) {
  const wrong = changed(change.text, change);
  if (!fits(change.file, wrong)) return "types";
  const ends = Date.now() + 1000 * Number(values.seconds);
  const tests = relatedTests(change.file);
  writeFileSync(path.join(copy, change.file), wrong);
  try {
    for (let from = 0; from < tests.length; from += TESTS_A_RUN) {
      const left = ends - Date.now();
      if (left <= 0) return "no time";
      const { status, error } = jest(["--bail", "--silent", ...tests.slice(from, from + TESTS_A_RUN)], left);
      if (error) return "no time";
      if (status !== 0) return "tests";
    }
    return "nothing";
  } finally {
    writeFileSync(path.join(copy, change.file), change.text);
  }
}

/** The tests that import the file, directly or not: first the one of its name, then by how much of the path they share. */
function relatedTests(file) {
  const { stdout } = jest([...ROOTS, "--listTests", "--findRelatedTests", file], 120_000);
  const own = path.basename(file).replace(/\.tsx?$/, "");
  const nearness = (test) => {
    const folders = path.dirname(test).split("/").slice(1);
    const shared = path
      .dirname(file)
      .split("/")
      .filter((each) => folders.includes(each)).length;
    return shared + (path.basename(test).startsWith(`${own}.`) ? 10 : 0);
  };
  const tests = stdout
    .split("\n")
    .filter((line) => line.endsWith(".ts") || line.endsWith(".tsx"))
    .map((line) => path.relative(copy, line))
    .filter((test) => !OF_WHAT_IS_BUILT.test(test))
    .sort((a, b) => nearness(b) - nearness(a) || (a < b ? -1 : 1));
  if (tests.length === 0) console.log(`No test imports ${file}.`);
  return tests;
}

function jest(words, timeout) {
  const bin = path.join(copy, "node_modules/jest/bin/jest.js");
  return spawnSync(process.execPath, [bin, "-w", "1", "--ci", ...words], {
    ...{ cwd: copy, encoding: "utf8", timeout, killSignal: "SIGKILL", maxBuffer: 1 << 26 },
  });
}

/** Numbers from 0 to 1 that a seed fixes. Source: Marsaglia (2003), J Stat Softw 8(14), "Xorshift RNGs". */
function randomFrom(start) {
  let state = (start * 2_654_435_769) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

function removeCopy() {
  try {
    for (const name of ["node_modules", "dist"]) rmSync(path.join(copy, name), { force: true });
    execFileSync("git", ["worktree", "remove", "--force", copy], { cwd: root });
  } catch {
    // The next run prunes what is gone from the folder of temporary files.
  }
  rmSync(path.dirname(copy), { recursive: true, force: true });
}
