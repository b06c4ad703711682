import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

/**
 * A test that needs a program of the machine. Without the program the test is left out and named as not run, unless
 * WINDOWLINE_REQUIRE_ALL=1 asks for everything: then its absence is a failure.
 */
export function componentTest(programs: readonly string[], name: string, run: () => void | Promise<void>): void {
  const missing = programs.filter((program) => !isInstalled(program));
  if (missing.length === 0) test(name, async () => run(), COMPONENT_TIMEOUT_MS);
  else if (process.env["WINDOWLINE_REQUIRE_ALL"] === "1") test(name, () => failMissing(missing));
  // Counted apart by jest: neither passed nor failed.
  else test.todo(`not run, ${missing.join(" and ")} not installed: ${name}`);
}

const COMPONENT_TIMEOUT_MS = 180_000;

function failMissing(missing: readonly string[]): never {
  throw new Error(`${missing.join(" and ")} must be installed when WINDOWLINE_REQUIRE_ALL is 1`);
}

export function isInstalled(program: string): boolean {
  const found = spawnSync(process.platform === "win32" ? "where" : "which", [program]);
  return found.status === 0;
}

/** Converts a file with LibreOffice, hands over the path of the result, and cleans up. */
export function withConverted<T>(file: string, to: string, use: (converted: string) => T): T {
  return withAllConverted([file], to, ([converted = ""]) => use(converted));
}

/** Converts files, whose names differ, with one start of LibreOffice under a profile of its own. */
export function withAllConverted<T>(files: readonly string[], to: string, use: (converted: string[]) => T): T {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-"));
  try {
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync("soffice", ["--headless", profile, "--convert-to", to, "--outdir", folder, ...files], {
      timeout: 150_000,
      stdio: "pipe",
    });
    const names = files.map((file) => `${path.basename(file, path.extname(file))}.${to.split(":")[0]}`);
    const missing = names.find((name) => !readdirSync(folder).includes(name));
    if (missing) throw new Error(`LibreOffice wrote no ${missing}`);
    return use(names.map((name) => path.join(folder, name)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
