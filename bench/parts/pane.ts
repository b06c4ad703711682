import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Browser } from "playwright-core";
import { openChromium } from "../../tests/browser/chromium";
import { longestTaskMs } from "../../tests/browser/longest-task";
import { makeUnwatched } from "../../tests/browser/make-unwatched";
import { serveFolder } from "../../tests/browser/static-server";
import { atMost, notRun, type Row } from "../row";
import { median } from "../timing";

const COMPARED = "The longest task of the pane's own thread while 500,000 rows are read and a report is made of them";
/** What the web's own measure calls a long task: W3C, Long Tasks API, "50ms". */
const MOST_MS = 50;
const ROUNDS = 3;

/** The pane in production form over a workbook in memory, in Chromium: processor time, the grid's own work apart. */
export async function ofPaneThread(): Promise<Row[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const browser = await browserOrNull();
    if (!browser) return [notRun(COMPARED, `at most ${MOST_MS} ms`, "Chromium is not on this machine")];
    build(folder);
    return [await measured(browser, folder).finally(() => browser.close())];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function browserOrNull(): Promise<Browser | null> {
  try {
    return await openChromium();
  } catch {
    return null;
  }
}

function build(folder: string): void {
  const { status, stderr } = spawnSync(process.execPath, ["tests/browser/pane-page/build.mjs", folder]);
  if (status !== 0) throw new Error(String(stderr));
}

async function measured(browser: Browser, folder: string): Promise<Row> {
  const server = await serveFolder(folder);
  const longest: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const page = await browser.newPage();
    await page.goto(`${server.address}/pane.html?book=large`);
    await page.getByRole("button", { name: "Read the workbook" }).waitFor();
    longest.push(await longestTaskMs(page, () => makeUnwatched(page)));
    await page.close();
  }
  await server.close();
  const detail = `the longest of each of ${ROUNDS} runs: ${longest.map((ms) => ms.toFixed(1)).join(", ")} ms`;
  return atMost(COMPARED, median(longest), MOST_MS, " ms", detail);
}
