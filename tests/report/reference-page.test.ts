import { readFileSync, writeFileSync } from "node:fs";
import { referencePage } from "../../src/report/reference-page";

const PAGE = "src/REFERENCE.md";

/** After a change of a table or a setting: WINDOWLINE_WRITE=1 npx jest tests/report/reference-page */
test("the page of tables and settings lists them as they are declared", () => {
  if (process.env.WINDOWLINE_WRITE === "1") writeFileSync(PAGE, referencePage());
  expect(readFileSync(PAGE, "utf8")).toBe(referencePage());
});
