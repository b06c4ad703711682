import { readFileSync, writeFileSync } from "node:fs";
import { findingsPage } from "../../src/records/findings/rules-page";

const PAGE = "src/FINDINGS.md";

/** After a change of the rules: WINDOWLINE_WRITE=1 npx jest tests/records/rules-page */
test("the page of findings lists the rules as they are", () => {
  if (process.env.WINDOWLINE_WRITE === "1") writeFileSync(PAGE, findingsPage());
  expect(readFileSync(PAGE, "utf8")).toBe(findingsPage());
});
