import { spawn } from "node:child_process";

const OPENERS: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
};

/** Opens the page in the usual browser. Where there is none, the printed address is enough: no failure. */
export function openBrowser(address: string): void {
  const [program, ...words] = OPENERS[process.platform] ?? ["xdg-open"];
  const child = spawn(program, [...words, address], { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
