import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import type { Choice } from "../../src/records/understanding/choices";
import { understand } from "../../src/records/understanding/understand";
import { WORD_WORDS } from "../../taskpane/words/understanding";
import { planOf } from "../records/programs/figures";
import type { Program } from "../records/programs/make-sheets";
import { MORE_PROGRAMS } from "../records/programs/more-workbooks";
import { truthOf } from "../records/programs/plan";
import { PROGRAMS } from "../records/programs/workbooks";
import { componentTest, isInstalled } from "../support/component";
import { asFile } from "./as-file";
import { openChromium, watch } from "./chromium";
import { type MessyBook, messyBook } from "./messy-book";

const SERVER = "dist/page-server/page-server.cjs";

let server: ChildProcess;
let address: string;
let browser: Browser;
let book: MessyBook;

beforeAll(async () => {
  if (!isInstalled("chromium")) return;
  if (!existsSync(SERVER)) throw new Error("npm run build comes before this test");
  server = spawn(process.execPath, [SERVER, "--port", "0", "--no-open"], { stdio: ["ignore", "pipe", "inherit"] });
  address = await new Promise((resolve) => {
    server.stdout?.on("data", (piece) => {
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(String(piece));
      if (found) resolve(found[0]);
    });
  });
  browser = await openChromium();
  book = await messyBook();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  server?.kill();
});

/** Every click, choice and file that a person has to make. */
class Acts {
  count = 0;

  constructor(readonly page: Page) {}

  async press(name: string | RegExp): Promise<void> {
    this.count += 1;
    await this.page.getByRole("button", { name }).first().click();
  }

  async choose(label: string | RegExp, option: string): Promise<void> {
    this.count += 1;
    await this.page.getByLabel(label).first().selectOption({ label: option });
  }

  async open(name: string, buffer: Buffer): Promise<void> {
    this.count += 1;
    await this.page.getByTestId("open-file").setInputFiles({ name, mimeType: "application/octet-stream", buffer });
    await this.page.locator(".bar-book", { hasText: new RegExp(`^${name}$`) }).waitFor();
  }
}

/** A page with the workbook open and read. */
async function readInPage(name: string, bytes: Buffer): Promise<{ page: Page; acts: Acts; faults: readonly string[] }> {
  const page = await (await browser.newContext({ viewport: { width: 1024, height: 768 } })).newPage();
  const faults = watch(page, address);
  await page.goto(address);
  await page.getByRole("button", { name: "Read the workbook" }).waitFor({ timeout: 60_000 });
  const acts = new Acts(page);
  await acts.open(name, bytes);
  await acts.press("Read the workbook");
  await page.getByRole("heading", { name: "How this workbook is read", exact: true }).waitFor();
  return { page, acts, faults };
}

/** Confirms what is shown, makes the report of the quarter, and gives the text of the pane. */
async function confirmAndReport(page: Page, acts: Acts): Promise<string> {
  await acts.press("Confirm, and read it this way");
  await page.getByRole("button", { name: "Go on to Quarter" }).waitFor();
  await acts.press("Go on to Quarter");
  await acts.press(/^Use September 30, 2026/);
  await acts.press("Make the report");
  await page.getByRole("heading", { name: "What the report says" }).waitFor({ timeout: 120_000 });
  await page.getByText("What each table says").click();
  return page.locator("#pane").innerText();
}

componentTest(["chromium"], "a workbook like none of ours comes to right figures in under twenty acts", async () => {
  const { page, acts, faults } = await readInPage("thistle.xlsx", book.bytes);
  // The title speaks of nothing as ready before it is.
  await page.getByRole("button", { name: /^(Say what|Confirm)/ }).waitFor();
  await acts.choose(/^“E”/, "Emerging");
  await acts.press(/^Join them as one child/);
  const said = await confirmAndReport(page, acts);
  expect(said).toContain(`${book.children} children in the program on the last day`);
  // The share of up-to-date skill checks that are met, as the plan has it.
  expect(said).toContain(`${book.met} of ${book.skillChecks} `);
  expect(acts.count).toBeLessThan(20);
  expect(faults).toEqual([]);
});

/** The choices of an invented program, by the menus that a person sees. */
async function makeChoices(acts: Acts, choices: readonly Choice[]): Promise<void> {
  for (const choice of choices) {
    if (choice.kind === "word") await acts.choose(new RegExp(`^“${choice.word}”`), WORD_WORDS[choice.means]);
    else if (choice.kind === "area of all") await acts.choose(/^\d+ skills? without an area/, choice.area);
    else throw new Error(`There is no click for a choice of the kind ${choice.kind}.`);
  }
}

const BY_CLICKS = ["long lists with a key", "one sheet per quarter, the day in the title", "Spanish headings"];

for (const name of BY_CLICKS) {
  componentTest(["chromium"], `by clicks, "${name}" gives the figures of its plan in under twenty acts`, async () => {
    const program = [...PROGRAMS, ...MORE_PROGRAMS].find((each) => each.name === name) as Program;
    const plan = planOf(program, 7);
    const workbook = program.workbook(plan);
    const { page, acts, faults } = await readInPage("own.xlsx", await asFile(workbook));
    await makeChoices(acts, program.acts(understand(workbook)));
    const said = await confirmAndReport(page, acts);
    const { inProgram, met, assessed } = truthOf(plan);
    expect(said).toContain(`${inProgram} children in the program on the last day`);
    expect(said).toContain(`${met} of ${assessed} `);
    expect(acts.count).toBeLessThan(20);
    expect(faults).toEqual([]);
  });
}
