import { execFileSync } from "node:child_process";
import { type Browser, chromium, type Page } from "playwright-core";

const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"].concat([
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
]);

/** The Chromium of this machine, with a fresh profile. */
export function openChromium(): Promise<Browser> {
  const executablePath = execFileSync("which", ["chromium"], { encoding: "utf8" }).trim();
  return chromium.launch({ executablePath, args: FLAGS });
}

/** What a page must never do: speak to another host, break its policy, fail unseen. */
export function watch(page: Page, address: string): string[] {
  const faults: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(data|blob):/.test(url)) faults.push(`asked ${url}`);
  });
  page.on("pageerror", (error) => faults.push(`error ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(`console ${message.text()}`);
  });
  return faults;
}
