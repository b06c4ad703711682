/// <reference types="office-js" />
import { readFileSync } from "node:fs";
import path from "node:path";
import { checkApiLevels, openInOffice, prepareOffice } from "./office-globals";
import { MANIFEST_SETS } from "./rich-client";
import { MemoryWorkbook } from "./workbook/memory-workbook";

const BASE = "http://127.0.0.1/officejs/";
const FOLDER = path.resolve("node_modules/@microsoft/office-js/dist");

/** Loads the unmodified office.js of npm into this process, without a DOM. Once a test file. */
export async function startOffice(sets: Readonly<Record<string, string>> = MANIFEST_SETS): Promise<void> {
  for (const [name, value] of Object.entries(pageStub())) {
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  }
  letLongTimersGo();
  prepareOffice(sets);
  openInOffice(new MemoryWorkbook());
  runScript(`${BASE}office.js`);
  await Office.onReady();
  checkApiLevels();
}

/** office.js cleans up after a refused request seconds later: that must not keep the process from ending. */
function letLongTimersGo(): void {
  const { setTimeout: start } = globalThis;
  const started = (run: () => void, ms = 0, ...rest: []) => {
    const timer = start(run, ms, ...rest);
    return ms >= 1000 ? timer.unref() : timer;
  };
  globalThis.setTimeout = Object.assign(started, start) as typeof setTimeout;
}

/** The few members of a page that office.js asks for while it starts. */
function pageStub(): object {
  const head = { appendChild: (script: Script) => load(script) };
  const tags: Readonly<Record<string, unknown[]>> = {
    script: [{ src: `${BASE}office.js`, getAttribute: () => null }],
    head: [head],
  };
  const document = {
    head,
    readyState: "complete",
    URL: "http://127.0.0.1/",
    getElementsByTagName: (name: string) => tags[name] ?? [],
    getElementById: () => null,
    createElement: () => ({ setAttribute: () => undefined, getAttribute: () => null }),
    addEventListener: () => undefined,
  };
  const location = { href: "http://127.0.0.1/", hash: "", search: "", protocol: "http:", host: "127.0.0.1" };
  const window = globalThis;
  const names = { window, top: window, parent: window, self: window, name: "" };
  const navigator = { userAgent: "", language: "en-US", platform: "" };
  return { ...names, document, location, navigator, history: {}, addEventListener: () => undefined };
}

interface Script {
  readonly src: string;
  readonly onload?: () => void;
}

function load(script: Script): Script {
  queueMicrotask(() => {
    runScript(script.src);
    script.onload?.();
  });
  return script;
}

function runScript(url: string): void {
  const code = readFileSync(path.join(FOLDER, url.slice(BASE.length)), "utf8");
  // Indirect, so that what the file declares becomes global, as in a page.
  (0, eval)(code);
}
