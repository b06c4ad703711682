import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Browser } from "playwright-core";
import { loadSolver } from "../../src/hosts/file/load-solver";
import { openChromium } from "../../tests/browser/chromium";
import { serveFolder } from "../../tests/browser/static-server";
import { type PreparedIn, prepareTimed } from "../release/prepare";
import { RELEASE } from "../release/program";
import { amount, atMost, milliseconds, notRun, type Row } from "../row";

const MOST_SECONDS = 30;
/** The search for a better pattern is told to end here, so that the last attack has time left. */
const SEARCH_MS = 20_000;
const MOST_CANCEL_MS = 50;
const SIZE = `${RELEASE.skills} skills, ${RELEASE.bands} bands, ${RELEASE.sites} sites, ${RELEASE.children.toLocaleString("en")} children`;
const COMPARED = `A release of met by age band prepared, protected and attacked: ${SIZE}`;
const IN_BROWSER = `${COMPARED}, in a worker of Chromium`;
const CANCELLED = "The same given up in the midst of it: the page is free again";

/** The largest release that has to be made while somebody waits, here and in the browser. */
export async function ofRelease(): Promise<Row[]> {
  const here = prepareTimed(
    await loadSolver(),
    SEARCH_MS,
    () => performance.now(),
    () => undefined,
  );
  return [rowOf(`${COMPARED}, in Node`, here), ...(await inChromium())];
}

async function inChromium(): Promise<Row[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-bench-"));
  try {
    const browser = await browserOrNull();
    const why = "Chromium is not on this machine";
    if (!browser) return [IN_BROWSER, CANCELLED].map((words) => notRun(words, `at most ${MOST_SECONDS} s`, why));
    build(folder);
    return await measured(browser, folder).finally(() => browser.close());
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
  const { status, stderr } = spawnSync(process.execPath, ["bench/release/build.mjs", folder]);
  if (status !== 0) throw new Error(String(stderr));
}

async function measured(browser: Browser, folder: string): Promise<Row[]> {
  const { address, close } = await serveFolder(folder);
  try {
    const page = await browser.newPage();
    await page.goto(`${address}/release.html`);
    const prepared = await page.evaluate<PreparedIn>(`releaseInWorker(${SEARCH_MS})`);
    const ms = await page.evaluate<number>("cancelInWorker()");
    return [
      rowOf(IN_BROWSER, prepared),
      atMost(CANCELLED, ms, MOST_CANCEL_MS, " ms", "the worker is ended, not asked"),
    ];
  } finally {
    await close();
  }
}

function rowOf(compared: string, prepared: PreparedIn): Row {
  const { ms, counts, hidden, attacked, loss, bound, stoppedEarly, steps } = prepared;
  const gap = loss === 0 ? 0 : (100 * (loss - bound)) / loss;
  const words = [
    `${amount(counts)} counts, ${amount(hidden)} hidden, ${amount(attacked)} small ones attacked and none proved`,
    `loss ${amount(loss)}, no pattern below ${amount(bound)} (a gap of ${gap.toFixed(1)}%${stoppedEarly ? ", the search ended early" : ""})`,
    `${steps} steps told`,
  ];
  return atMost(compared, ms / 1000, MOST_SECONDS, " s", `${milliseconds(ms)}; ${words.join("; ")}`);
}
