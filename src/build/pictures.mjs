/**
 * The first three pages of the sample report as pictures for the README: `node src/build/pictures.mjs`, after a build of the
 * command line. It needs LibreOffice, and pdftocairo of poppler.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

const TO = "sample-workbooks/pictures";
const PAGES = 3;
/** Dots to the inch: small print can still be read, and no picture comes near the limit. */
const DOTS = 74;
const MOST_BYTES = 120_000;

const folder = mkdtempSync(path.join(tmpdir(), "windowline-pictures-"));
try {
  const file = path.join(folder, "report.xlsx");
  const windowline = ["dist/cli/windowline.cjs", "report", "sample-workbooks/alder-fork.xlsx", "--as-of", "2026-09-30"];
  execFileSync("node", [...windowline, "--out", file], { stdio: "ignore" });
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  execFileSync("soffice", ["--headless", profile, "--convert-to", "pdf", "--outdir", folder, file], {
    stdio: "ignore",
  });
  mkdirSync(TO, { recursive: true });
  for (let page = 1; page <= PAGES; page += 1) {
    const only = ["-png", "-r", String(DOTS), "-f", String(page), "-l", String(page), "-singlefile"];
    const name = path.join(TO, `report-page-${page}`);
    execFileSync("pdftocairo", [...only, path.join(folder, "report.pdf"), name]);
    const { size } = statSync(`${name}.png`);
    if (size >= MOST_BYTES) throw new Error(`${name}.png has ${size} bytes: take fewer dots to the inch.`);
    console.log(`Written: ${name}.png, ${size} bytes`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
