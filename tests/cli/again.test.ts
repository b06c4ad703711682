import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);
const again = (...words: string[]) => windowline(["again", ...words]);

beforeAll(() => {
  for (const [seed, name] of [
    ["3", "book.xlsx"],
    ["4", "other.xlsx"],
  ] as const) {
    expect(windowline(["sample", "--children", "15", "--seed", seed, "--out", at(name)]).status).toBe(0);
  }
  const words = ["--as-of", "2026-09-30", "--recheck", "60", "--by", "Site", "--tables", "met-by-band,ratings"];
  const made = windowline(["report", at("book.xlsx"), ...words, "--out", at("r.xlsx"), "--json", at("r.json")]);
  expect(made).toMatchObject({ status: 0 });
});

test.each(["r.json", "r.xlsx"])("%s from the same workbook is the same, to the byte", (report) => {
  expect(again(at(report), at("book.xlsx"))).toMatchObject({
    status: 0,
    stdout: "Made again from the same records: the same, to the byte.\n",
  });
});

test("from another workbook: which records differ, then the first cells, no child among them", () => {
  const { status, stdout } = again(at("r.json"), at("other.xlsx"));
  expect(status).toBe(1);
  expect(stdout).toMatch(/^Made again, and not the same\.\nThe records are not the same\.\n(Children|Observations): /);
  expect(stdout).toMatch(/\n[\d,]+ cells differ:\n {2}met-by-band \/ .* then, .* now/);
  expect(stdout.split("\n").filter((line) => line.startsWith("  "))).toHaveLength(10);
  expect(stdout).not.toMatch(/AF-\d/);
});

test("a file changed by hand is told apart from records that changed", () => {
  const text = readFileSync(at("r.json"), "utf8");
  writeFileSync(at("edited.json"), text.replace(/"rows": \[\n(\s+\["[^\]]*?),(\d+),/, '"rows": [\n$1,9$2,'));
  const { status, stdout } = again(at("edited.json"), at("book.xlsx"));
  expect(status).toBe(1);
  expect(stdout).toMatch(/the file was changed after it was made/);
  expect(stdout).toMatch(/1 cell differs:\n {2}met-by-band \//);
});

test.each([
  ["book.xlsx", 2, /does not say how it was made/],
  ["none.json", 3, /cannot be read/],
])("%s is no report", (report, status, message) => {
  const run = again(at(report), at("book.xlsx"));
  expect(run.status).toBe(status);
  expect(run.stderr).toMatch(message);
});
