import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import ExcelJS from "exceljs";
import { unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { componentTest, isInstalled } from "../support/component";
import { windowline } from "../support/windowline";
import { SKILL_ROWS } from "../tables/caseload/program";
import { seriousFaults } from "./axe";
import { listen, openChromium, watch } from "./chromium";
import { press, tabTo } from "./keyboard";
import { faultsInEveryLook } from "./looks";

/** In every id, family and code of the workbook, and nowhere else. */
const CANARY = "Quillfeather";
const AS_OF = "2026-09-30";
const SERVER = "dist/page-server/page-server.cjs";
const folder = mkdtempSync(path.join(os.tmpdir(), "windowline-release-"));
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

inChromium("by clicks: prepared, previewed, and saved to the byte as the command line saves it", async () => {
  const { page, faults, said } = await opened();
  await prepared(page);
  await page.getByText("Nothing small. ").waitFor();
  const table = page.getByRole("region", { name: "The table Met by age group, as it leaves" });
  expect(await table.getByRole("cell", { name: "* held back" }).count()).toBeGreaterThan(0);

  const saved = [
    await downloaded(page, "Save as .xlsx", "release-2026-09-30.xlsx"),
    await downloaded(page, "Save as CSV, in a .zip", "release-2026-09-30-csv.zip"),
    await downloaded(page, "Save pictures (SVG), in a .zip", "release-2026-09-30-pictures.zip"),
  ] as const;
  const out = path.join(folder, "release-2026-09-30.xlsx");
  const words = [
    "release",
    book,
    "--as-of",
    AS_OF,
    "--tables",
    "met-by-band",
    "--format",
    "xlsx,csv,svg",
    "--out",
    out,
  ];
  expect(windowline(words).status).toBe(0);
  expect(saved[0].equals(readFileSync(out))).toBe(true);
  const files = { ...unzipSync(saved[1]), ...unzipSync(saved[2]) };
  expect(Object.keys(files).sort()).toEqual([
    "release-2026-09-30-met-by-band.csv",
    "release-2026-09-30-met-by-band.svg",
    "release-2026-09-30-read-me.txt",
  ]);
  for (const [name, bytes] of Object.entries(files)) {
    expect([name, Buffer.from(bytes).equals(readFileSync(path.join(folder, name)))]).toEqual([name, true]);
  }

  const ledger = await downloaded(page, "Save the release log", "release-ledger.json");
  const leaving = [...Object.values(unzipSync(saved[0])), ...Object.values(files), ledger].map(textOf).join("\n");
  expect(leaving).toMatch(/Prepared under the rule of at least 11/);
  expect(leaving).not.toContain(CANARY);
  expect(said.filter((each) => each.includes(CANARY))).toEqual([]);
  expect(await keptIn(page)).toEqual({ title: "Windowline", local: 0, session: 0, cookie: "", databases: [] });
  expect(faults).toEqual([]);
});

inChromium("by keyboard alone: a text is checked, the ledger saved, opened again and protected against", async () => {
  const { page, faults } = await opened();
  // Past the grid, in which Tab goes from cell to cell.
  await page.keyboard.press("F6");
  await press(page, "Release");
  await tabTo(page, "As-of date");
  await page.keyboard.type("09302026");
  await press(page, "Prepare the release");
  await page.getByRole("heading", { level: 1, name: /^Prepared under the rule of at least 11: / }).waitFor();
  // What is new has the keyboard, and its finding is what a screen reader says.
  const focused = await page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
  expect(focused).toMatch(/^Prepared under the rule of at least 11: \d+ of \d+ counts are held back$/);
  await tabTo(page, "Text to check");
  await page.keyboard.type("On September 30, 2026, 7 children had not met it.");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "1. Take out, sentence 1, “7”" }).waitFor();
  // Marked where it is, with its number and its word; and a button leads to it in the field.
  expect(await page.locator("mark", { hasText: "Take out" }).first().textContent()).toBe("71 Take out");
  await press(page, "Show in the text: 7");
  expect(await page.evaluate(selectedInFocus)).toBe("7");
  const download = page.waitForEvent("download");
  await press(page, "Save the release log");
  const file = path.join(folder, "kept.json");
  await (await download).saveAs(file);

  const chooser = page.waitForEvent("filechooser");
  await press(page, "Open another release log");
  await (await chooser).setFiles(file);
  await page.getByText("kept.json: 1 earlier release, the last as of September 30, 2026. Every hash agrees.").waitFor();
  await page.getByText("A table, a setting, a correction or the release log changed since.").waitFor();
  await press(page, "Prepare the release");
  await page.getByText("Protected against 1 earlier release of the release log").waitFor();
  expect(faults).toEqual([]);
});

inChromium(
  "cancelled by Esc nothing is prepared; a threshold below the floor has the keyboard and its sentence",
  async () => {
    const { page } = await opened();
    await page.getByRole("button", { name: "Release", exact: true }).click();
    await page.getByLabel("As-of date", { exact: true }).fill(AS_OF);
    await page.getByLabel(/^Threshold/).selectOption({ label: "Another number" });
    await page.getByLabel("Least number of children", { exact: true }).fill("4");
    await page.getByRole("button", { name: "Prepare the release" }).click();
    await page.getByText("must be a whole number of children from 5 (the floor) to 1000.").waitFor();
    expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-invalid"))).toBe("true");
    await page.getByLabel("Least number of children", { exact: true }).fill("");
    // Held, so that no machine is fast enough to be done before Esc.
    await page.route("**/*.wasm", () => new Promise(() => undefined));
    await page.getByRole("button", { name: "Prepare the release" }).click();
    await page.getByRole("button", { name: "Cancel" }).waitFor();
    await page.keyboard.press("Escape");
    await page.getByText("Canceled. Nothing was prepared, and nothing was written.").waitFor();
    await page.getByRole("heading", { level: 1, name: "Prepare figures that can leave the program" }).waitFor();
  },
);

inChromium("axe-core finds nothing serious in any look, and nothing scrolls sideways", async () => {
  const { page } = await opened();
  await page.getByRole("button", { name: "Release", exact: true }).click();
  expect(await seriousFaults(page, ".grid")).toEqual([]);
  await prepared(page);
  await page.evaluate(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));
  expect(await faultsInEveryLook(page, ".grid")).toEqual([]);
});

/** Ninety children of three ages; how many have met each skill differs by age, so that some counts are small. */
async function writeBook(): Promise<void> {
  const children = Array.from({ length: 90 }, (_, n) => [
    `${CANARY}-${n}`,
    ["2026-02-15", "2025-08-15", "2025-01-15"][n % 3],
    `${CANARY} T${n % 4}`,
    `${CANARY} F${Math.floor(n / 2)}`,
    "2026-03-01",
  ]);
  const skills = SKILL_ROWS.slice(1, 4).map(([id]) => id);
  const tables = {
    Children: [["Child", "Birth date", "Therapist", "Family", "Enrolled"], ...children],
    Observations: [
      ["Child", "Skill", "Date", "Result"],
      ...children.flatMap(([id], n) =>
        skills.map((skill, at) => [id, skill, "2026-09-01", n % (3 + at) < 2 - (n % 3) + at ? "met" : "not met"]),
      ),
    ],
    Skills: SKILL_ROWS.slice(0, 4),
  };
  const workbook = new ExcelJS.Workbook();
  for (const [name, rows] of Object.entries(tables)) workbook.addWorksheet(name).addRows(rows.map((row) => [...row]));
  await workbook.xlsx.writeFile(book);
}

async function opened() {
  const context = await browser.newContext({ viewport: { width: 1360, height: 820 } });
  const page = await context.newPage();
  const faults = watch(page, address);
  const said = listen(page);
  await page.goto(address);
  await page.getByRole("button", { name: "Read the workbook" }).waitFor({ timeout: 60_000 });
  await page.getByTestId("open-file").setInputFiles(book);
  await page.locator("aside").getByText("own.xlsx", { exact: true }).waitFor();
  return { page, faults, said };
}

async function prepared(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Release", exact: true }).click();
  await page.getByLabel("As-of date", { exact: true }).fill(AS_OF);
  await page.getByRole("button", { name: "Prepare the release" }).click();
  await page.getByRole("heading", { level: 1, name: /^Prepared under the rule of at least 11: / }).waitFor();
}

async function downloaded(page: Page, button: string, fileName: string): Promise<Buffer> {
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: button, exact: true }).click();
  expect((await download).suggestedFilename()).toBe(fileName);
  const file = path.join(folder, `saved-${fileName}`);
  await (await download).saveAs(file);
  await page.getByText(`Saved as ${fileName}.`).waitFor();
  return readFileSync(file);
}

function textOf(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString("utf8");
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

function selectedInFocus(): string {
  const field = document.activeElement as HTMLTextAreaElement;
  return field.value.slice(field.selectionStart, field.selectionEnd);
}
