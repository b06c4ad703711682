import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { openChromium, watch } from "../../browser/chromium";
import { longestTaskMs } from "../../browser/longest-task";
import { serveFolder, type StaticServer } from "../../browser/static-server";
import type { PageTools } from "../../office/in-page";
import { componentTest, isInstalled } from "../../support/component";

declare global {
  interface Window {
    tools: PageTools;
  }
}

const folder = mkdtempSync(path.join(os.tmpdir(), "windowline-excel-"));
let server: StaticServer;
let browser: Browser;

beforeAll(async () => {
  if (!isInstalled("chromium")) return;
  const built = spawnSync(process.execPath, ["tests/hosts/excel/build-page.mjs", folder], { encoding: "utf8" });
  if (built.status !== 0) throw new Error(built.stderr);
  server = await serveFolder(folder);
  browser = await openChromium();
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function openPage(): Promise<{ page: Page; faults: string[] }> {
  const page = await browser.newPage();
  const faults = watch(page, server.address);
  await page.goto(`${server.address}/index.html`);
  expect(await page.evaluate(() => window.tools.start())).toBe(true);
  return { page, faults };
}

const inChromium = (name: string, run: () => Promise<void>) => componentTest(["chromium"], name, run);

inChromium("reads, writes and removes over the real office.js, and asks no other host", async () => {
  const { page, faults } = await openPage();
  await page.evaluate(() => window.tools.open(2000, { dateSystem: 1904, emptyCells: null }));
  expect(await page.evaluate(() => window.tools.dateSystem())).toBe(1904);
  expect(await page.evaluate(() => window.tools.read())).toBe(2000);
  const sheet = { name: "Summary", columns: [], rows: [["=1+1"], [3]] };
  expect(await page.evaluate((each) => window.tools.add([each]), sheet)).toEqual(["Summary"]);
  expect(await page.evaluate(() => window.tools.valueAt(1, 0, 0))).toBe("=1+1");
  await page.evaluate(() => window.tools.removeAll());
  expect(await page.evaluate(() => window.tools.names())).toEqual(["Observations"]);
  expect(faults).toEqual([]);
});

inChromium("planted mistakes are caught there too", async () => {
  const { page } = await openPage();
  await page.evaluate(() => window.tools.open(1, {}));
  expect(await page.evaluate(() => window.tools.plantUnloaded())).toBe("PropertyNotLoaded");
  expect(await page.evaluate(() => window.tools.plantNewerApi())).toBe("ApiNotFound");
});

inChromium("reading half a million cells gives the page's thread back again and again", async () => {
  const { page } = await openPage();
  await page.evaluate(() => window.tools.open(125_000, {}));
  const started = performance.now();
  const longest = await longestTaskMs(page, async () => {
    expect(await page.evaluate(() => window.tools.read())).toBe(125_000);
  });
  console.log(`longest task while reading: ${longest.toFixed(1)} ms of processor time`);
  expect(longest).toBeLessThan((performance.now() - started) / 4);
});
