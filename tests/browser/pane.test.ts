import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import type { MemoryHost } from "../taskpane/memory-host";
import { reportJson } from "../../src/report/json";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { parseSettings } from "../../src/settings/settings";
import { asRead } from "../sample/as-read";
import { reportOf } from "../support/report-of";
import { componentTest, isInstalled } from "../support/component";
import { openChromium, watch } from "./chromium";
import { press } from "./keyboard";
import { longestTaskMs } from "./longest-task";
import { faultsInEveryLook } from "./looks";
import { makeUnwatched } from "./make-unwatched";
import { serveFolder, type StaticServer } from "./static-server";

declare global {
  interface Window {
    host: MemoryHost;
  }
}

/** WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels without scrolling in two directions. */
const NARROW = { width: 320, height: 720 };
const folder = mkdtempSync(path.join(os.tmpdir(), "windowline-pane-"));

let server: StaticServer;
let browser: Browser;

async function open(book: string): Promise<{ page: Page; faults: string[] }> {
  const context = await browser.newContext({ viewport: NARROW });
  const page = await context.newPage();
  const faults = watch(page, server.address);
  await page.goto(`${server.address}/pane.html?book=${book}`);
  await page.getByRole("button", { name: "Read the workbook" }).waitFor();
  return { page, faults };
}

async function make(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Read the workbook" }).click();
  await page.getByText(/^Read: /).waitFor();
  await page.getByRole("button", { name: "Quarter", exact: true }).click();
  await page.getByRole("button", { name: /^Use .* the end of that quarter/ }).click();
  await page.getByRole("button", { name: "Make the report" }).click();
  await page.getByRole("heading", { name: "What the report says" }).waitFor({ timeout: 120_000 });
}

const inChromium = (name: string, run: () => Promise<void>) => componentTest(["chromium"], name, run);

beforeAll(async () => {
  if (!isInstalled("chromium")) return;
  const built = spawnSync(process.execPath, ["tests/browser/pane-page/build.mjs", folder], { encoding: "utf8" });
  if (built.status !== 0) throw new Error(built.stderr);
  server = await serveFolder(folder);
  browser = await openChromium();
}, 400_000);

afterEach(async () => {
  await Promise.all(browser?.contexts().map((context) => context.close()) ?? []);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});

inChromium("the whole job by clicks: read, make, look at a chart, save, remove", async () => {
  const { page, faults } = await open("sample");
  await make(page);
  expect(await page.evaluate(() => window.host.added.length)).toBeGreaterThan(8);
  await page.locator("figure div[role=img] svg").waitFor();
  await page.getByText("Numbers of this chart").click();
  expect(
    await page
      .getByRole("region", { name: /^Numbers of/ })
      .getByRole("row")
      .count(),
  ).toBeGreaterThan(5);
  await page.getByRole("button", { name: "Save the report" }).click();
  await page.getByText("Saved as report-2026-09-30.xlsx.").waitFor({ timeout: 60_000 });
  const head = await page.evaluate(() => Array.from(window.host.saved[0]?.bytes.slice(0, 2) ?? []));
  expect(String.fromCharCode(...head)).toBe("PK");
  await page.getByRole("button", { name: /^Remove what this run added/ }).click();
  await page.getByRole("button", { name: "Remove the sheets" }).click();
  await page.getByText(/^Removed: /).waitFor();
  expect(await page.evaluate(() => window.host.added.length)).toBe(0);
  expect(faults).toEqual([]);
});

inChromium("the same by keyboard alone", async () => {
  const { page, faults } = await open("sample");
  await press(page, "Read the workbook");
  await page.getByText(/^Read: /).waitFor();
  await press(page, "Quarter");
  await press(page, /^Use .* the end of that quarter/);
  await press(page, "Make the report");
  await page.getByRole("heading", { name: "What the report says" }).waitFor({ timeout: 120_000 });
  await press(page, /^Remove what this run added/);
  await press(page, "Remove the sheets");
  await page.getByText(/^Removed: /).waitFor();
  expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true);
  expect(faults).toEqual([]);
});

inChromium("its numbers are the same as Node makes them, to the byte", async () => {
  const { page } = await open("sample");
  await make(page);
  await page.getByRole("button", { name: "Save its numbers for next quarter" }).click();
  await page.getByText("Saved as report-2026-09-30.json.").waitFor();
  const bytes = await page.evaluate(() => Array.from(window.host.downloaded[0]?.bytes ?? []));
  const parsed = parseSettings({ asOf: "2026-09-30" }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join());
  const book = asRead(sampleSheets(makeSample({ children: 240, seed: 7 })));
  expect(Buffer.from(bytes).toString()).toBe(reportJson(reportOf(book, parsed.settings, null)));
});

inChromium("Escape cancels, and nothing is left", async () => {
  const { page } = await open("sample");
  await page.evaluate(() => (window.host.pace = 300));
  await page.getByRole("button", { name: "Quarter", exact: true }).click();
  await page.getByLabel("As-of date", { exact: true }).fill("2026-09-30");
  await page.getByRole("button", { name: "Make the report" }).click();
  await page.getByRole("button", { name: "Cancel" }).waitFor();
  await page.keyboard.press("Escape");
  await page.getByText("Canceled. Nothing was added to the workbook.").waitFor();
  expect(await page.evaluate(() => window.host.added.length)).toBe(0);
});

inChromium("a faulty workbook: a finding's cell is shown, and a decision settles it", async () => {
  const { page, faults } = await open("faults");
  await page.getByRole("button", { name: "Read the workbook" }).click();
  const finding = page.locator("details", { hasText: "A row of a skill that is not in Skills." }).first();
  await finding.locator("summary").click();
  await finding.getByRole("button", { name: /^Show Observations/ }).click();
  expect(await page.evaluate(() => window.host.shown)).toEqual([expect.stringMatching(/^Observations!B\d+$/)]);
  await finding.getByRole("combobox").selectOption({ index: 1 });
  await finding.getByRole("button", { name: "Keep this correction" }).click();
  await page.getByRole("button", { name: /^Revoke: / }).waitFor();
  await page.getByText("A row of a skill that is not in Skills.").first().waitFor({ state: "detached" });
  expect(await page.evaluate(() => JSON.stringify(window.host.decisions))).toMatch(/skill-alias/);
  expect(faults).toEqual([]);
});

inChromium("axe-core finds nothing serious in any look, and nothing scrolls sideways", async () => {
  const { page } = await open("faults");
  expect(await faultsInEveryLook(page)).toEqual([]);
  await make(page);
  await page.locator("figure div[role=img] svg").waitFor();
  await page.getByText("Make another report").click();
  await page.getByText("How values are read").click();
  expect(await faultsInEveryLook(page)).toEqual([]);
  await page.getByRole("button", { name: "Records", exact: true }).click();
  await page.evaluate(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));
  expect(await faultsInEveryLook(page)).toEqual([]);
});

inChromium("nothing is stored, and the title says nothing about the workbook", async () => {
  const { page } = await open("faults");
  await make(page);
  const kept = await page.evaluate(() => [localStorage.length, sessionStorage.length, document.cookie, document.title]);
  expect(kept).toEqual([0, 0, "", "Windowline"]);
});

/** A share of the whole, not milliseconds: a slow machine is no fault of the pane. The number itself is printed. */
inChromium("no task holds the pane's thread for long while 500,000 rows are read and tabulated", async () => {
  const { page } = await open("large");
  const started = performance.now();
  const longest = await longestTaskMs(page, () => makeUnwatched(page));
  console.log(`longest task of the pane's thread: ${longest.toFixed(1)} ms of processor time`);
  expect(longest).toBeLessThan((performance.now() - started) / 20);
  expect(await page.evaluate(() => window.host.workbook.sheets.map(({ grid }) => grid.rowCount))).toContain(500_001);
});

test("the first load in Excel is under 400 KB, gzip", () => {
  const html = readFileSync("dist/taskpane.html", "utf8");
  const scripts = [...html.matchAll(/<script[^>]* src="?(?!https:)([^\s">]+)/g)].map(([, file]) => `dist/${file}`);
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.every((file) => existsSync(file))).toBe(true);
  const bytes = scripts.reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0);
  expect(bytes).toBeLessThan(400 * 1024);
});
