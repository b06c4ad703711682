import { readFileSync } from "node:fs";
import { VERSION } from "../../src/report/version";

test("reports carry the version of package.json", () => {
  expect(VERSION).toBe(JSON.parse(readFileSync("package.json", "utf8")).version);
});
