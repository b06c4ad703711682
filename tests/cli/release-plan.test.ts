import { existsSync } from "node:fs";
import path from "node:path";
import { BOOK, temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);
const WORDS = ["release", BOOK, "--as-of", "2026-09-30", "--tables", "referral-steps", "--from", "2025-10-01"];

test("the plan of a release says what was released before and what later ones cannot show, and writes nothing", () => {
  const log = ["--ledger", at("log.json")];
  expect(windowline([...WORDS, ...log, "--out", at("a.xlsx")]).status).toBe(0);
  const plan = windowline([...WORDS, ...log, "--out", at("b.xlsx"), "--plan"]);
  expect(plan.status).toBe(0);
  expect(plan.stdout).toMatch(
    /^Released before:\n {2}1\. As of September 30, 2026, period from October 1, 2025: Referral steps, .*Rule: at least 11; \d+ counts shown/,
  );
  expect(plan.stdout).toMatch(/this one loses no figure/);
  expect(plan.stdout).toMatch(/no later release of the same children and day can show what it holds back/);
  expect(existsSync(at("b.xlsx"))).toBe(false);
});

test("a floor under the owner's is set in the owner's file, not in the words of a run", () => {
  const low = windowline([...WORDS, "--out", at("c.xlsx"), "--floor", "3", "--minimum-cell", "3"]);
  expect(low.status).toBe(2);
  expect(low.stderr).toMatch(/The floor of this program is 5\. The owner of the records can set a lower one/);
  expect(existsSync(at("c.xlsx"))).toBe(false);
});
