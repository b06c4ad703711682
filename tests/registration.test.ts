/** What is checked before the add-in goes into an Excel, and where it goes. Excel itself was not run. */
import { readFileSync } from "node:fs";
import { fileAsked, manifestFaults, registrationOf } from "../src/build/registration.mjs";

const manifest = readFileSync("manifest.xml", "utf8");
const ID = "[0-9a-f-]{36}";

test("the manifest has no faults where every file that it names was built", () => {
  const asked: string[] = [];
  expect(manifestFaults(manifest, (file) => asked.push(file) > 0)).toEqual([]);
  expect(asked).toEqual(expect.arrayContaining(["taskpane.html", "functions.json", "functions.js"]));
});

test("a file that was not built is named", () => {
  expect(manifestFaults(manifest, (file) => file !== "functions.json")).toEqual([
    "dist/functions.json is missing: build again.",
  ]);
});

test("what is not XML, and a build for another address, are said", () => {
  expect(manifestFaults("<OfficeApp>", () => true)).toEqual(["dist/manifest.xml is not well formed: build again."]);
  const elsewhere = manifest.replaceAll("https://localhost:3000/", "https://tools.example.org/");
  expect(manifestFaults(elsewhere, () => true)[0]).toMatch(/another address/);
});

test("nothing above dist/ can be asked for", () => {
  expect(fileAsked("/../../etc/passwd")).toBe("etc/passwd");
  expect(fileAsked("/icons/icon-16.png?v=1")).toBe("icons/icon-16.png");
});

test("each system has its place", () => {
  const mac = registrationOf("darwin", "/Users/me", manifest, "x");
  expect(mac).toEqual({
    kind: "file",
    file: expect.stringMatching(
      new RegExp(`^/Users/me/Library/Containers/com.microsoft.Excel/Data/Documents/wef/${ID}.manifest.xml$`),
    ) as string,
  });
  const windows = registrationOf("win32", "C:\\Users\\me", manifest, "C:\\w\\dist\\manifest.xml");
  if (windows.kind !== "registry") throw new Error(windows.kind);
  expect(windows.add).toEqual(expect.arrayContaining(["add", "C:\\w\\dist\\manifest.xml"]));
  expect(windows.remove[0]).toBe("delete");
  expect(registrationOf("linux", "/home/me", manifest, "x").kind).toBe("by hand");
});
