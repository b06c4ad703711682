/**
 * The add-in as it is built, over the unmodified office.js of npm, in Chromium: dist/taskpane.html with its own policy and
 * scripts, and a workbook in memory in Excel's place. Only requirement sets of the manifest may be used, and no request may
 * be over 5 MB.
 */
import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { WORKER_FROM_ROWS } from "../../functions/elsewhere/worker-calls";
import { FUNCTIONS } from "../../functions/registry";
import { serialOf } from "../../src/age/serial";
import { reportOf } from "../support/report-of";
import { reportSheets } from "../../src/report/sheets/report-sheets";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { parseSettings } from "../../src/settings/settings";
import { safeSheetNames } from "../../src/workbook/sheet-names";
import type { CellOut, SheetOut } from "../../src/workbook/sheets";
import { asRead } from "../sample/as-read";
import { componentTest, isInstalled } from "../support/component";
import { CANARY, SAMPLES } from "./addin-page/books";
import { type Addin, startAddin } from "./addin-page/open-addin";
import type {} from "./addin-page/start";
import { withNames } from "./addin-page/with-names";
import { seriousFaults } from "./axe";
import { press, tabTo } from "./keyboard";

const AS_OF = "2026-09-30";
let addin: Addin;

const inChromium = (name: string, run: () => Promise<void>) => componentTest(["chromium"], name, run);

beforeAll(async () => {
  if (isInstalled("chromium")) addin = await startAddin();
}, 120_000);

afterEach(async () => {
  await Promise.all(addin?.browser.contexts().map((context) => context.close()) ?? []);
});

afterAll(() => addin?.close());

inChromium(
  "by clicks: the report stands in the workbook as the core makes it, and goes again without a trace",
  async () => {
    const { page, faults } = await addin.open("small");
    const before = await snapshots(page);
    await page.getByRole("button", { name: "Read the workbook" }).click();
    await page.getByText(/^Read: /).waitFor();
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole("button", { name: "Quarter", exact: true }).click();
    await page.getByRole("button", { name: /^Use September 30, 2026/ }).click();
    await page.getByRole("button", { name: "Make the report" }).click();
    await ended(page, /^The report as of .* is ready/);
    expect(await seriousFaults(page)).toEqual([]);
    await compare(page, before.length);
    expect((await snapshots(page)).slice(0, before.length)).toEqual(before);

    await page.getByRole("button", { name: /^Remove what this run added/ }).click();
    await page.getByRole("button", { name: "Remove the sheets" }).click();
    await ended(page, /^Removed: /);
    expect(await snapshots(page)).toEqual(before);
    expect(faults).toEqual([]);
  },
);

inChromium("by keyboard alone: a decision settles a finding, the report is made under it, and taken away", async () => {
  const { page, faults, said } = await addin.open("faults");
  const before = await snapshots(page);
  await press(page, "Read the workbook");
  await page.getByText(/^Read: /).waitFor();
  await press(page, /^A row of a skill that is not in Skills/);
  await press(page, /^Show Observations/);
  await page.waitForFunction(() => window.excel.book.activeSheet?.name === "Observations");
  await tabTo(page, /: is the skill$/);
  await page.keyboard.press("ArrowDown");
  await press(page, "Keep this correction");
  await page.getByRole("button", { name: /^Revoke: / }).waitFor();
  await page.getByText("A row of a skill that is not in Skills.").first().waitFor({ state: "detached" });
  expect((await namesIn(page)).at(-1)).toBe("Windowline corrections");
  const decided = await snapshots(page);
  expect(decided.slice(0, -1)).toEqual(before);

  await press(page, "Quarter");
  await press(page, /^Use .* the end of that quarter/);
  await press(page, "Make the report");
  await ended(page, /^The report as of .* is ready/);
  expect((await namesIn(page)).length).toBeGreaterThan(decided.length + 8);
  await press(page, /^Remove what this run added/);
  await press(page, "Remove the sheets");
  await ended(page, /^Removed: /);
  expect(await snapshots(page)).toEqual(decided);
  expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true);
  expect(faults).toEqual([]);
  expect(await keptIn(page)).not.toContain(CANARY);
  expect(said.join("\n")).not.toContain(CANARY);
  expect(await page.title()).toBe("Windowline");
  // The workbook's own name is shown, the names of children nowhere.
  expect((await page.content()).replaceAll(`${CANARY}.xlsx`, "")).not.toContain(CANARY);
});

inChromium("a cancel while the sheets are being added leaves nothing", async () => {
  const { page, faults } = await addin.open("small");
  const before = await snapshots(page);
  await page.evaluate(() =>
    window.excel.atSecondSheet(() =>
      document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true })),
    ),
  );
  await make(page);
  await ended(page, "Canceled. Nothing was added to the workbook.");
  expect(await snapshots(page)).toEqual(before);
  expect(faults).toEqual([]);
});

inChromium("an edit while the run goes on: one sentence, and nothing is added", async () => {
  const { page } = await addin.open("small");
  const start = await requests(page);
  await page.getByRole("button", { name: "Read the workbook" }).click();
  await page.getByText(/^Read: /).waitFor();
  const ofReading = (await requests(page)) - start;
  const names = await namesIn(page);
  await page.evaluate((after) => window.excel.editAfter(after), ofReading);
  await make(page);
  await ended(
    page,
    "Not done. The records changed after they were read, so nothing was added. Read the workbook again, then build the report.",
  );
  expect(await namesIn(page)).toEqual(names);
});

inChromium("a protected structure: one sentence, and the report opens as a new workbook", async () => {
  const { page } = await addin.open("small");
  await page.evaluate(() => (window.excel.book.isStructureProtected = true));
  const before = await snapshots(page);
  await make(page);
  await ended(page, /^Not done\. The structure of this workbook is protected.*save the report as a new workbook\.$/);
  await page.getByRole("button", { name: "Save the report" }).click();
  // Excel opens the file and has not put it on a disk: nobody is told that it is saved.
  await ended(page, "Opened as a new workbook, not saved yet.");
  expect(await snapshots(page)).toEqual(before);
  const base64 = await page.evaluate(() => window.excel.book.opened[0] ?? "");
  const saved = await new ExcelJS.Workbook().xlsx.load(Buffer.from(base64, "base64") as never);
  expect(saved.getWorksheet(reported()[0]!.name)?.getCell("A1").value).toEqual(
    valueOf(reported()[0]?.rows[0]?.[0] ?? null),
  );
});

inChromium(
  "a release opens as a new workbook or is a download, with the warning, and is no sheet of this one",
  async () => {
    const { page, faults } = await addin.open("faults");
    const before = await snapshots(page);
    await page.getByRole("button", { name: "Release", exact: true }).click();
    await page.getByLabel("As-of date", { exact: true }).fill(AS_OF);
    // One age group: a solver on a busy machine is soon done with it.
    await page.getByLabel("Edges of the age groups", { exact: true }).fill("0, 36");
    await page.getByRole("button", { name: "Prepare the release" }).click();
    await page
      .getByRole("heading", { level: 1, name: /^Prepared under the rule of at least 11: / })
      .waitFor({ timeout: 120_000 });
    await page.getByText(/Excel writes its user’s name into it on saving/).waitFor();
    await page.getByRole("button", { name: "Open as a new workbook" }).click();
    await ended(page, "Opened as a new workbook, not saved yet.");
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save as .xlsx" }).click();
    const saved = readFileSync((await (await download).path()) ?? "");
    const base64 = await page.evaluate(() => window.excel.book.opened[0] ?? "");
    expect(saved.equals(Buffer.from(base64, "base64"))).toBe(true);
    const sheets = await new ExcelJS.Workbook().xlsx.load(saved as never);
    expect(sheets.getWorksheet("Read me first")?.getCell("A1").value).toMatch(/^Read me first/);
    expect(await snapshots(page)).toEqual(before);
    expect(faults).toEqual([]);
  },
);

/**
 * By hand: 3 is small, so its row and its column each need another hidden count, and these a fourth where they cross; of all
 * such squares 3, 20, 16, 12 holds the least. What is in place of 3 may be anything from 0 to 19.
 */
const COUNTS = [
  [20, 3, 15],
  [30, 40, 25],
  [12, 16, 19],
];
const PROTECTED = [
  ["*", "*", 15, 38],
  [30, 40, 25, 95],
  ["*", "*", 19, 47],
  [62, 59, 59, 180],
];

inChromium("one runtime holds pane and functions, small calls and large ones, within the manifest's sets", async () => {
  const { page, faults } = await addin.open("small");
  const text = readFileSync("dist/functions.json", "utf8");
  const ids = (JSON.parse(text) as { functions: { id: string }[] }).functions.map(({ id }) => id);
  expect((await page.evaluate(() => window.excel.functionIds())).sort()).toEqual(ids.sort());
  // By hand: January has 31 days.
  const age = await page.evaluate(() => window.excel.call("AGE", [[["2026-01-01"]], [["2026-02-01"]], "days"]));
  expect(age).toEqual([[31]]);
  const tables = await Promise.all(
    ["Children", "Observations", "Skills"].map((name) => page.evaluate((each) => window.excel.cellsOf(each), name)),
  );
  expect(tables[1]?.length).toBeGreaterThan(WORKER_FROM_ROWS);
  const args = [...tables, AS_OF, null, null];
  const large = await page.evaluate((given) => window.excel.call("METBYBAND", given), args);
  expect(large).toEqual(FUNCTIONS.get("METBYBAND")?.fn(...args));
  const safe = await page.evaluate((counts) => window.excel.call("PROTECT", [counts, null]), COUNTS);
  expect(safe).toEqual(PROTECTED);
  expect(await page.evaluate(() => window.excel.askForNewerApi())).toBe("ApiNotFound");
  expect(faults).toEqual([]);
});

async function make(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Quarter", exact: true }).click();
  await page.getByLabel("As-of date", { exact: true }).fill(AS_OF);
  await page.getByRole("button", { name: "Make the report" }).click();
}

/** Waits until the pane says how a job ended: whatever else it says is no reason to wait on. */
async function ended(page: Page, text: string | RegExp): Promise<void> {
  const told = page.locator("[role=status][aria-atomic=true]", { hasText: /\S/ });
  await told.waitFor({ timeout: 60_000 });
  expect(await told.textContent()).toMatch(text);
}

const namesIn = (page: Page) => page.evaluate(() => window.excel.names());
const snapshots = (page: Page) => page.evaluate(() => window.excel.snapshots());
const requests = (page: Page) => page.evaluate(() => window.excel.host.traffic.length);

/** The sheets that the core makes of the same records, without office.js between. */
function reported(): SheetOut[] {
  const workbook = asRead(withNames(sampleSheets(makeSample(SAMPLES["small"] ?? { children: 0, seed: 0 }))));
  const parsed = parseSettings({ asOf: AS_OF }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join());
  return reportSheets(reportOf(workbook, parsed.settings, null));
}

/** Every cell of every new sheet, the sentence beside each chart, and the charts. */
async function compare(page: Page, own: number): Promise<void> {
  const sheets = reported();
  const names = await namesIn(page);
  const given = [...names.slice(0, own), ...sheets.map(({ name }) => name)];
  expect(names).toEqual(safeSheetNames(given));
  for (const [index, sheet] of sheets.entries()) {
    const name = names[own + index] ?? "";
    const cells = await page.evaluate((each) => window.excel.cellsOf(each), name);
    const sentences = (sheet.charts ?? []).map(({ altText }) => altText);
    for (const sentence of sentences) expect(cells.flat()).toContain(sentence);
    expect(await page.evaluate((each) => window.excel.chartsOf(each), name)).toBe(sentences.length);
    const expected = sheet.rows.map((row) => row.map((cell, at) => valueOf(cell, sheet.columns[at]?.format)));
    const isAdded = (cell: unknown, of: unknown) => of === null && sentences.includes(String(cell));
    const found = expected.map((row, at) =>
      row.map((of, column) => (isAdded(cells[at]?.[column], of) ? null : (cells[at]?.[column] ?? null))),
    );
    expect(found.map(rounded)).toEqual(expected.map(rounded));
  }
}

/**
 * To 12 digits: engines may give another last digit for a logarithm (ECMA-262, 21.3.2: "implementation-approximated"), and
 * Chromium is a newer one than Node.
 */
function rounded(row: readonly unknown[]): unknown[] {
  return row.map((cell) => (typeof cell === "number" ? Number(cell.toPrecision(12)) : cell));
}

function valueOf(cell: CellOut, usualFormat?: string): unknown {
  const { value, format = usualFormat } = typeof cell === "object" && cell !== null ? cell : { value: cell };
  if (value === "") return null;
  return format === "date" && typeof value === "number" ? serialOf(value, 1900) : value;
}

/** Everything that the browser keeps for the page, as text. */
async function keptIn(page: Page): Promise<string> {
  return page.evaluate(async () =>
    JSON.stringify([
      Object.entries(localStorage),
      Object.entries(sessionStorage),
      document.cookie,
      await indexedDB.databases(),
      await caches.keys(),
      window.name,
      location.href,
    ]),
  );
}
