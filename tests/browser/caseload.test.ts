import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import ExcelJS from "exceljs";
import type { Browser, Download, Page } from "playwright-core";
import { componentTest, isInstalled } from "../support/component";
import { windowline } from "../support/windowline";
import { SKILL_ROWS } from "../tables/caseload/program";
import { seriousFaults } from "./axe";
import { openChromium, watch } from "./chromium";
import { press, tabTo } from "./keyboard";
import { faultsInEveryLook } from "./looks";

/** In every id and code of the workbook, and nowhere else. */
const CANARY = "Quillfeather";
const AS_OF = "2026-09-30";
const SERVER = "dist/page-server/page-server.cjs";
const folder = mkdtempSync(path.join(os.tmpdir(), "windowline-caseload-"));
const book = path.join(folder, "own.xlsx");

let server: ChildProcess;
let address: string;
let browser: Browser;

const inChromium = (name: string, run: () => Promise<void>) => componentTest(["chromium"], name, run);

beforeAll(async () => {
  await writeBook();
  if (!isInstalled("chromium")) return;
  if (!existsSync(SERVER)) throw new Error("npm run build comes before this test");
  server = spawn(process.execPath, [SERVER, "--port", "0", "--no-open"], { stdio: ["ignore", "pipe", "inherit"] });
  address = await new Promise((resolve, reject) => {
    server.stdout?.on("data", (said) => /http:\S+/.test(String(said)) && resolve(/http:\S+/.exec(String(said))![0]));
    server.once("exit", () => reject(new Error("the server ended before it said where it is")));
  });
  browser = await openChromium();
}, 120_000);

afterEach(async () => {
  await Promise.all(browser?.contexts().map((context) => context.close()) ?? []);
});

afterAll(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

inChromium("by clicks: list, add a child's page, save it as the command line writes it, remove it", async () => {
  const { page, faults, asked } = await opened();
  await page.getByRole("button", { name: "Caseload" }).click();
  await page.getByRole("button", { name: "Read the workbook to see its therapists" }).click();
  await page.getByLabel("Therapist", { exact: true }).selectOption({ label: `${CANARY} T1` });
  await page.getByLabel("As-of date").fill(AS_OF);
  await page.getByRole("button", { name: "List the children" }).click();
  await page
    .getByRole("heading", { name: `Caseload of ${CANARY} T1: 2 children, 1 to talk about with the clinician now` })
    .waitFor();
  const order = await page.getByRole("heading", { level: 4 }).allTextContents();
  expect(order.map((text) => text.split(" ")[0])).toEqual([`${CANARY}-B`, `${CANARY}-A`]);
  await page.getByRole("button", { name: `Add the page for the next visit of ${CANARY}-B` }).click();
  await page.getByText("The page was added after your own sheets as “Child page (family)”").waitFor();
  expect(await page.getByText("Child page (family)").count()).toBeGreaterThan(1);

  const saved = await downloaded(page, "Save that page as .xlsx", "child-page-2026-09-30.xlsx");
  const words = ["page", book, "--as-of", AS_OF, "--child", `${CANARY}-B`, "--out", path.join(folder, "cli.xlsx")];
  expect(windowline(words).status).toBe(0);
  expect(readFileSync(saved).equals(readFileSync(path.join(folder, "cli.xlsx")))).toBe(true);

  await page.getByRole("button", { name: /^Remove what this run added/ }).click();
  await page.getByRole("button", { name: "Remove the sheets" }).click();
  await page.getByText("Removed: Child page as of September 30, 2026: 1 sheet.").waitFor();
  expect(asked.filter((request) => request.includes(CANARY))).toEqual([]);
  expect(await keptIn(page)).toEqual({ title: "Windowline", local: 0, session: 0, cookie: "", databases: [] });
  expect(faults).toEqual([]);
});

inChromium(
  "by keyboard alone: the page of the caseload, with the plan for as many visits as are asked for",
  async () => {
    const { page, faults } = await opened();
    // Past the grid, in which Tab goes from cell to cell.
    await page.keyboard.press("F6");
    await press(page, "Caseload");
    await press(page, "Read the workbook to see its therapists");
    await page.getByLabel("Therapist", { exact: true }).waitFor();
    // The button gave way to the field, which has the keyboard now.
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("SELECT");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Enter");
    expect(await page.getByLabel("As-of date").inputValue()).toBe(AS_OF);
    await tabTo(page, "Visits to plan for");
    await page.keyboard.type("1");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: /^Caseload of / }).waitFor();
    // What is new has the keyboard, and its finding is what a screen reader says.
    const focused = await page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
    expect(focused).toMatch(/^Caseload of .*: 2 children, 1 to talk about with the clinician now$/);
    expect(await page.locator("summary", { hasText: /^Visit \d/ }).count()).toBe(1);
    await press(page, "Add one page for this therapist");
    await page.getByText("The page was added after your own sheets as “Caseload (internal)”").waitFor();
    await press(page, "Save that page as .xlsx");
    await page.getByText("Saved as caseload-2026-09-30.xlsx.").waitFor();
    expect(faults).toEqual([]);
  },
);

inChromium("nobody to list, and a field that wants a look: a sentence that says what to do", async () => {
  const { page } = await opened();
  await page.getByRole("button", { name: "Caseload" }).click();
  await page.getByRole("button", { name: "List the children" }).click();
  await page.getByText("A field needs checking before the children can be listed.").waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-invalid"))).toBe("true");
  await page.getByLabel("As-of date").fill("2025-08-20");
  await page.getByRole("button", { name: "List the children" }).click();
  await page.getByText("Choose a therapist, then list the children.").first().waitFor();
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("SELECT");
  await page.getByLabel("Therapist", { exact: true }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "List the children" }).click();
  await page.getByRole("heading", { name: "No child is in the program on August 20, 2025" }).waitFor();
  await page
    .getByText(/^No child of .* Choose another date, or another therapist/)
    .first()
    .waitFor();
});

inChromium("axe-core finds nothing serious in any look, and nothing scrolls sideways", async () => {
  const { page } = await opened();
  await page.getByRole("button", { name: "Caseload" }).click();
  await page.getByLabel("As-of date").fill(AS_OF);
  await page.getByRole("button", { name: "List the children" }).click();
  await page.getByLabel("Therapist", { exact: true }).selectOption({ index: 1 });
  expect(await seriousFaults(page, ".grid")).toEqual([]);
  await page.getByRole("button", { name: "List the children" }).click();
  await page.getByText(/^Listed: 2 children/).waitFor();
  await page.evaluate(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));
  expect(await faultsInEveryLook(page, ".grid")).toEqual([]);
});

/** Four children of two therapists; one of the first therapist's has lost a skill. */
async function writeBook(): Promise<void> {
  const children = ["A", "B", "C", "D"].map((letter, n) => [
    `${CANARY}-${letter}`,
    "2025-08-15",
    `${CANARY} T${n < 2 ? 1 : 2}`,
    "2025-09-01",
  ]);
  const tables = {
    Children: [["Child", "Birth date", "Therapist", "Enrolled"], ...children],
    Observations: [
      ["Child", "Skill", "Date", "Result"],
      ...children.map(([id]) => [id, "strolls", "2026-09-01", "not met"]),
      [`${CANARY}-B`, "cdc1", "2026-05-01", "met"],
      [`${CANARY}-B`, "cdc1", "2026-09-01", "lost"],
    ],
    Skills: SKILL_ROWS,
  };
  const workbook = new ExcelJS.Workbook();
  for (const [name, rows] of Object.entries(tables)) workbook.addWorksheet(name).addRows(rows.map((row) => [...row]));
  await workbook.xlsx.writeFile(book);
}

async function opened() {
  const context = await browser.newContext({ viewport: { width: 1360, height: 820 } });
  const page = await context.newPage();
  const faults = watch(page, address);
  const asked: string[] = [];
  page.on("request", (request) => asked.push(`${request.url()} ${request.postData() ?? ""}`));
  await page.goto(address);
  await page.getByRole("button", { name: "Read the workbook" }).waitFor({ timeout: 60_000 });
  await page.getByTestId("open-file").setInputFiles(book);
  await page.locator("aside").getByText("own.xlsx", { exact: true }).waitFor();
  return { page, faults, asked };
}

async function downloaded(page: Page, button: string, fileName: string): Promise<string> {
  const download: Promise<Download> = page.waitForEvent("download");
  await page.getByRole("button", { name: button }).click();
  expect((await download).suggestedFilename()).toBe(fileName);
  const file = path.join(folder, fileName);
  await (await download).saveAs(file);
  return file;
}

async function keptIn(page: Page) {
  return page.evaluate(async () => ({
    title: document.title,
    local: localStorage.length,
    session: sessionStorage.length,
    cookie: document.cookie,
    databases: await indexedDB.databases(),
  }));
}
