import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Runs the import rules over one planted file of a folder. */
function rulesSay(source: string, within = "src/age"): { status: number | null; output: string } {
  const folder = mkdtempSync(path.join(within, "planted-"));
  try {
    writeFileSync(path.join(folder, "planted.ts"), source);
    const command = [
      "node_modules/dependency-cruiser/bin/dependency-cruise.mjs",
      "--config",
      ".dependency-cruiser.mjs",
      folder,
    ];
    const { status, stdout } = spawnSync(process.execPath, command, { encoding: "utf8" });
    return { status, output: stdout };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test("a planted import from above is found", () => {
  const { status, output } = rulesSay(
    'import { buildCohort } from "../../cohort/cohort";\nexport const planted = buildCohort;\n',
  );
  expect(status).not.toBe(0);
  expect(output).toContain("age-imports-only-what-is-below");
});

test("a planted import of Node in the core is found", () => {
  const { status, output } = rulesSay(
    'import { readFileSync } from "node:fs";\nexport const planted = readFileSync;\n',
  );
  expect(status).not.toBe(0);
  expect(output).toContain("the-core-imports-no-node");
});

test("a planted import of the command line in the pane is found", () => {
  const { status, output } = rulesSay(
    'import { EXIT } from "../../src/cli/failure";\nexport const planted = EXIT;\n',
    "taskpane",
  );
  expect(status).not.toBe(0);
  expect(output).toContain("nothing-imports-the-command-line");
});

test("an import from beside is allowed", () => {
  expect(rulesSay('import { dayOf } from "../day";\nexport const planted = dayOf;\n').status).toBe(0);
});
