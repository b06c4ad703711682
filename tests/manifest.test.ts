/**
 * Our own rules for manifest.xml: the network check of Office is not to be had everywhere. Element names and limits:
 * Microsoft Learn, "Office add-ins XML manifest", "Configure your add-in to use a shared runtime" (read in stored pages);
 * lengths of resources from the same (short strings 125, long strings 250, ids 32 characters).
 */
import { readFileSync } from "node:fs";
import { SaxesParser } from "saxes";

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

const manifest = parse(readFileSync("manifest.xml", "utf8"));
const all = (name: string) => descendants(manifest).filter((each) => each.name === name);
const only = (name: string) => {
  const found = all(name);
  expect(found).toHaveLength(1);
  return found[0] as Element;
};

test("one id that is a GUID, and the version of package.json with a fourth part", () => {
  expect(only("Id").text).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
  expect(only("Version").text).toBe(`${JSON.parse(readFileSync("package.json", "utf8")).version}.0`);
});

test("asks for exactly the requirement sets that the add-in needs", () => {
  const sets = all("Set").map(({ attributes }) => [attributes.Name, attributes.MinVersion]);
  expect(sets).toEqual([
    ["SharedRuntime", "1.1"],
    ["CustomFunctionsRuntime", "1.3"],
    ["ExcelApi", "1.12"],
  ]);
});

test("one shared runtime: runtime, page, function file and pane are one address", () => {
  expect(only("Runtime").attributes).toEqual({ resid: "Taskpane.Url", lifetime: "long" });
  const page = only("Page").children[0] as Element;
  const pane = only("Action").children.find(({ name }) => name === "SourceLocation") as Element;
  for (const { attributes } of [page, only("FunctionFile"), pane]) expect(attributes.resid).toBe("Taskpane.Url");
});

test("every resid is declared once, and every resource is used", () => {
  const declared = ["bt:Image", "bt:Url", "bt:String"].flatMap((name) =>
    all(name).flatMap(({ attributes }) => (attributes.id === undefined ? [] : [attributes.id])),
  );
  const used = descendants(manifest).flatMap(({ attributes }) =>
    attributes.resid === undefined ? [] : [attributes.resid],
  );
  expect(new Set(declared).size).toBe(declared.length);
  expect([...new Set(used)].sort()).toEqual([...declared].sort());
  for (const id of declared) expect(id.length).toBeLessThanOrEqual(32);
});

test("ids of group and control differ, and strings keep to their lengths", () => {
  const ids = [...all("Group"), ...all("Control")].map(({ attributes }) => attributes.id);
  expect(new Set(ids).size).toBe(ids.length);
  const lengths = (parent: string) =>
    only(parent).children.map(({ attributes }) => attributes.DefaultValue?.length ?? 0);
  expect(Math.max(...lengths("bt:ShortStrings"))).toBeLessThanOrEqual(125);
  expect(Math.max(...lengths("bt:LongStrings"))).toBeLessThanOrEqual(250);
});

test("the namespace is the one that the functions are called by", () => {
  expect(
    all("bt:String").find(({ attributes }) => attributes.id === "Functions.Namespace")?.attributes.DefaultValue,
  ).toBe("COHORT");
});

test("every address begins with the one that the build replaces", () => {
  const addresses = descendants(manifest)
    .map(({ attributes }) => attributes.DefaultValue ?? "")
    .filter((value) => value.includes("://"));
  expect(addresses.length).toBeGreaterThan(8);
  for (const address of addresses) expect(address).toMatch(/^https:\/\/localhost:3000\//);
});

function parse(xml: string): Element {
  const root: Element = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    const element: Element = { name, attributes: attributes as Record<string, string>, children: [], text: "" };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (text) => {
    const at = open.at(-1);
    if (at) at.text += text.trim();
  });
  parser.on("closetag", () => {
    open.pop();
  });
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(xml).close();
  return root;
}

function descendants(element: Element): Element[] {
  return element.children.flatMap((child) => [child, ...descendants(child)]);
}
