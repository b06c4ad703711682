import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { temporaryFolder, windowline } from "../support/windowline";

const readme = readFileSync("README.md", "utf8").replace(/\n(> )?/g, " ");

test("the release of the README is what its command gives", () => {
  const command = /windowline -- (release sample-workbooks\/alder-fork\.xlsx \S.*?\.xlsx)(?= )/.exec(readme)?.[1] ?? "";
  const folder = temporaryFolder();
  mkdirSync(path.join(folder, "reports"));
  const words = command.split(" ").map((word) => (word.startsWith("reports/") ? path.join(folder, word) : word));
  expect(windowline(words).status).toBe(0);
  const text = readFileSync(path.join(folder, "reports/referrals-2026-read-me.txt"), "utf8");
  const csv = readFileSync(path.join(folder, "reports/referrals-2026-referral-steps.csv"), "utf8");
  for (const step of ["Received", "Eligible"]) {
    const sentence = new RegExp(`^${step}: .*?\\)\\.`, "m").exec(text)?.[0];
    expect(sentence).toBeDefined();
    expect(readme.replaceAll("**", "")).toContain(sentence!);
  }
  expect(csv).toMatch(/\nevaluated,62,\*,/);
  expect(csv).toMatch(/\nplan,38,\*,/);
});
