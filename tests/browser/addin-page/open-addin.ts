import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { listen, openChromium, watch } from "../chromium";
import { serveFolder } from "../static-server";

/** The address of taskpane.html's one script from outside; here the same file comes out of npm's copy. */
const CDN = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const OFFICE_JS = path.resolve("node_modules/@microsoft/office-js/dist");
/** The width that Excel gives a pane at first, about. Common practice, no source. */
const VIEWPORT = { width: 350, height: 900 };

export interface OpenedAddin {
  readonly page: Page;
  readonly faults: string[];
  readonly said: string[];
}

export interface Addin {
  readonly browser: Browser;
  open(book: string): Promise<OpenedAddin>;
  close(): Promise<void>;
}

/** The add-in as it stands in dist/, served to Chromium with a workbook in memory in Excel's place. */
export async function startAddin(): Promise<Addin> {
  if (!existsSync("dist/taskpane.html")) throw new Error("npm run build comes before this test");
  const inPage = hostScript();
  const server = await serveFolder(path.resolve("dist"));
  const browser = await openChromium();
  return {
    browser,
    async open(book) {
      const context = await browser.newContext({ viewport: VIEWPORT });
      await context.route(`${CDN}**`, (route) =>
        route.fulfill({
          path: path.join(OFFICE_JS, new URL(route.request().url()).pathname.split("/hosted/")[1] ?? ""),
        }),
      );
      const page = await context.newPage();
      await page.addInitScript({ content: inPage });
      const faults = watch(page, server.address, CDN);
      const said = listen(page);
      await page.goto(`${server.address}/taskpane.html?book=${book}`);
      await page.getByRole("button", { name: "Read the workbook" }).waitFor();
      return { page, faults, said };
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

function hostScript(): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), "windowline-addin-"));
  try {
    const built = spawnSync(process.execPath, ["tests/browser/addin-page/build.mjs", folder], { encoding: "utf8" });
    if (built.status !== 0) throw new Error(built.stderr);
    return readFileSync(path.join(folder, "excel.js"), "utf8");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
