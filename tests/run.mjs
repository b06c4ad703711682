/**
 * The whole test command: build, types, lint, import rules, all tests in one time zone, and those that a zone could touch
 * again in another. Ends with what could not run on this machine, and a line of counts.
 */
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";

const bin = (name) => path.join("node_modules", ".bin", name);
const results = path.join(os.tmpdir(), `windowline-jest-${process.pid}.json`);
const jest = (zone, ...words) => ({
  name: `tests (${zone})`,
  command: [bin("jest"), "--ci", "--json", `--outputFile=${results}`, ...words],
  env: { TZ: zone },
});

const steps = [
  { name: "build", command: ["src/build/build.mjs"] },
  { name: "types", command: [bin("tsc"), "--noEmit", "-p", "."] },
  { name: "lint", command: [bin("eslint"), "."] },
  { name: "format", command: [bin("prettier"), "--check", "--log-level", "warn", "."] },
  {
    name: "import rules",
    command: [
      bin("depcruise"),
      "--config",
      ".dependency-cruiser.mjs",
      "src",
      "functions",
      "taskpane",
      "bench",
      "tests",
    ],
  },
  jest("Pacific/Apia"),
  // The core has no Date at all, which lint sees to. What reads or writes days and times of files runs on the other side of
  // the date line too; reports and releases are made in other zones, to the byte, by tests of their own (tests/cli).
  jest(
    "America/Los_Angeles",
    ...[
      "tests/age",
      "tests/records/dates",
      "tests/hosts/file/read/cells",
      ...["book", "samples"].map((name) => `tests/hosts/file/read/${name}.test`),
      "tests/hosts/file/write/write-workbook",
      "tests/functions/ages",
      "tests/cli/files",
    ],
  ),
];

const components = [
  { name: "LibreOffice (the recalculation witness and the page check)", programs: ["soffice", "libreoffice"] },
  { name: "pdftoppm (the page check)", programs: ["pdftoppm"] },
  { name: "Chromium (the pane and the embedded page)", programs: ["chromium"] },
];

let passed = 0;
let failed = 0;
for (const step of steps) {
  const started = performance.now();
  const ok = run(step);
  console.log(`${ok ? "ok    " : "FAILED"} ${step.name} (${((performance.now() - started) / 1000).toFixed(1)} s)`);
}

const missing = components.filter(({ programs }) => !programs.some(isInstalled));
for (const { name } of missing) {
  const required = process.env.WINDOWLINE_REQUIRE_ALL === "1";
  console.log(`Not run: ${name} is not on this machine${required ? ", and WINDOWLINE_REQUIRE_ALL is set" : ""}.`);
  if (required) failed += 1;
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

function run({ command, env = {} }) {
  const { status } = spawnSync(process.execPath, [scriptOf(command[0]), ...command.slice(1)], {
    stdio: "inherit",
    env: { ...process.env, ...env },
  });
  const counts = countsOfJest(command);
  passed += counts.passed + (counts.any ? 0 : Number(status === 0));
  failed += counts.failed + (counts.failed === 0 && status !== 0 ? 1 : 0);
  return status === 0;
}

function countsOfJest(command) {
  if (!command.includes("--json")) return { any: false, passed: 0, failed: 0 };
  try {
    const { numPassedTests, numFailedTests, numTotalTests } = JSON.parse(readFileSync(results, "utf8"));
    rmSync(results, { force: true });
    return { any: true, passed: numPassedTests, failed: numFailedTests + (numTotalTests === 0 ? 1 : 0) };
  } catch {
    return { any: true, passed: 0, failed: 1 };
  }
}

/** The script behind a command of node_modules, so that no shell is needed on any system. */
function scriptOf(file) {
  if (!file.startsWith("node_modules")) return file;
  const name = path.basename(file);
  const owner =
    { depcruise: "dependency-cruiser", tsc: "typescript" }[name] ?? (name === "webpack" ? "webpack-cli" : name);
  const { bin: entry } = JSON.parse(readFileSync(path.join("node_modules", owner, "package.json"), "utf8"));
  const script = typeof entry === "string" ? entry : (entry[name] ?? Object.values(entry)[0]);
  return path.join("node_modules", owner, script);
}

function isInstalled(program) {
  const folders = (process.env.PATH ?? "").split(path.delimiter);
  return folders.some((folder) => {
    try {
      return readFileSync(path.join(folder, program)) !== undefined;
    } catch {
      return false;
    }
  });
}
