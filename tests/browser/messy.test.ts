import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { componentTest, isInstalled } from "../support/component";
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

componentTest(["chromium"], "a workbook like none of ours comes to right figures in under twenty acts", async () => {
  const page = await (await browser.newContext({ viewport: { width: 1024, height: 768 } })).newPage();
  const faults = watch(page, address);
  await page.goto(address);
  await page.getByRole("button", { name: "Read the workbook" }).waitFor({ timeout: 60_000 });
  const acts = new Acts(page);
  await acts.open("thistle.xlsx", book.bytes);
  await acts.press("Read the workbook");
  await page.getByRole("heading", { name: "How this workbook is read", exact: true }).waitFor();
  // The title speaks of nothing as ready before it is.
  await page.getByRole("button", { name: /^(Say what|Confirm)/ }).waitFor();
  await acts.choose(/^“E”/, "Emerging");
  await acts.press(/^Join them as one child/);
  await acts.press("Confirm, and read it this way");
  await page.getByRole("button", { name: "Go on to Quarter" }).waitFor();
  await acts.press("Go on to Quarter");
  await acts.press(/^Use September 30, 2026/);
  await acts.press("Make the report");
  await page.getByRole("heading", { name: "What the report says" }).waitFor({ timeout: 120_000 });
  await page.getByText("What each table says").click();
  const said = await page.locator("#pane").innerText();
  expect(said).toContain(`${book.children} children in the program on the last day`);
  // The share of up-to-date skill checks that are met, as the plan has it.
  expect(said).toContain(`${book.met} of ${book.skillChecks} `);
  expect(acts.count).toBeLessThan(20);
  expect(faults).toEqual([]);
});
