import { spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import os from "node:os";
import path from "node:path";

export const BOOK = "sample-workbooks/alder-fork.xlsx";
export const FAULTS = "sample-workbooks/alder-fork-faults.xlsx";

/** Runs the built command line as a person would. */
export function windowline(words: readonly string[], input = "", env: Readonly<Record<string, string>> = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["dist/cli/windowline.cjs", ...words], {
    input,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 256 * 1024 * 1024,
  });
  return { status, stdout, stderr };
}

export function temporaryFolder(): string {
  return mkdtempSync(path.join(os.tmpdir(), "windowline-test-"));
}
