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

/** What a page must never do: speak to a host other than these, break its policy, fail unseen. */
export function watch(page: Page, ...addresses: readonly string[]): string[] {
  const faults: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    const isOwn = addresses.some((address) => url.startsWith(address)) || /^(data|blob):/.test(url);
    if (!isOwn) faults.push(`asked ${url}`);
  });
  page.on("pageerror", (error) => faults.push(`error ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(`console ${message.text()}`);
  });
  return faults;
}

/** Every request with what it carried, every line of the console and every title, for a search afterwards. */
export function listen(page: Page): string[] {
  const said: string[] = [];
  page.on("request", (request) => said.push(`${request.url()} ${request.postData() ?? ""}`));
  page.on("console", (message) => said.push(message.text()));
  page.on("framenavigated", (frame) => void frame.title().then((title) => said.push(title)));
  return said;
}
