/** What `npm run build` puts into dist/ for Excel: functions.json, what the script registers, and the functions themselves agree. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import path from "node:path";
import vm from "node:vm";
import { FUNCTIONS } from "../functions/registry";

const dist = (name: string) => path.join("dist", name);
const described: {
  id: string;
  description?: string;
  options?: { cancelable?: boolean };
  parameters: { name: string; optional?: boolean; description?: string }[];
}[] = JSON.parse(readFileSync(dist("functions.json"), "utf8")).functions;

function associated(): Map<string, (...args: unknown[]) => unknown> {
  const found = new Map<string, (...args: unknown[]) => unknown>();
  const CustomFunctions = { associate: (id: string, fn: (...args: unknown[]) => unknown) => found.set(id, fn) };
  const sandbox: Record<string, unknown> = { CustomFunctions, console, TextEncoder, TextDecoder };
  sandbox.self = sandbox;
  sandbox.globalThis = sandbox;
  sandbox.document = { currentScript: { tagName: "SCRIPT", src: "https://localhost:3000/functions.js" } };
  sandbox.location = { href: "https://localhost:3000/taskpane.html" };
  const context = vm.createContext(sandbox);
  for (const script of ["shared.js", "functions.js"]) vm.runInContext(readFileSync(dist(script), "utf8"), context);
  return found;
}

test("functions.json, the associations and the functions are the same, with the same arguments", () => {
  const registered = associated();
  expect(described.map(({ id }) => id).sort()).toEqual([...FUNCTIONS.keys()].sort());
  expect([...registered.keys()].sort()).toEqual([...FUNCTIONS.keys()].sort());
  for (const { id, parameters } of described) {
    const own = FUNCTIONS.get(id)!;
    expect(parameters.map(({ name, optional }) => (optional ? `[${name}]` : name))).toEqual(own.parameters);
    // A rest or a default parameter would make these differ, and the arguments arrive wrongly.
    expect(own.fn.length).toBe(parameters.length);
  }
});

test("Excel has a description to show for every function and argument", () => {
  for (const { description, parameters } of described) {
    for (const text of [description, ...parameters.map((each) => each.description)]) expect(text).toMatch(/\S{2,}/);
  }
});

test("Excel tells every function when nobody waits for its answer any more", () => {
  for (const { id, options } of described) expect([id, options]).toEqual([id, { cancelable: true }]);
});

test("the manifest of dist names files that are there", () => {
  const addresses = [...readFileSync(dist("manifest.xml"), "utf8").matchAll(/https:\/\/localhost:3000\/([\w./-]+)/g)];
  expect(addresses.length).toBeGreaterThan(8);
  for (const [, file] of addresses) expect(existsSync(dist(file as string))).toBe(true);
});

test("icons are as large as their names say", () => {
  const icons = readdirSync(dist("icons"));
  expect(icons).toHaveLength(8);
  for (const icon of icons) {
    const png = readFileSync(dist(path.join("icons", icon)));
    expect(icon).toBe(`icon-${png.readUInt32BE(16)}.png`);
    expect(png.readUInt32BE(20)).toBe(png.readUInt32BE(16));
  }
});

test("the page of the pane takes Office.js from its own place, and nothing else from outside", () => {
  const html = readFileSync(dist("taskpane.html"), "utf8");
  const outside = [...html.matchAll(/(?:src|href)="?(https?:[^"\s>]+)/g)].map(([, address]) => address);
  expect(outside).toEqual(["https://appsforoffice.microsoft.com/lib/1/hosted/office.js"]);
  expect(html).toContain("default-src 'none'");
});

test("the first load stays under 410 KB, packed", () => {
  const html = readFileSync(dist("taskpane.html"), "utf8");
  const own = [...html.matchAll(/src="?([^":\s>]+\.js)/g)].map(([, file]) => file as string);
  const worker = readdirSync("dist").filter((name) => name.startsWith("pane-worker"));
  expect(own.length).toBeGreaterThan(1);
  expect(worker).toHaveLength(1);
  const bytes = [...own, ...worker].reduce((sum, file) => sum + gzipSync(readFileSync(dist(file))).length, 0);
  expect(bytes).toBeLessThan(410_000);
});
