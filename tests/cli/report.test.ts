import { copyFileSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { BOOK, FAULTS, temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);

function report(...words: string[]) {
  return windowline(["report", BOOK, "--as-of", "2026-09-30", ...words]);
}

test("makes the report workbook and the JSON, the same bytes every time, in any time zone and language", () => {
  const words = ["report", BOOK, "--as-of", "2026-09-30"];
  const first = windowline([...words, "--out", at("a.xlsx"), "--json", at("a.json")], "", {
    TZ: "Pacific/Apia",
    LANG: "C",
  });
  const second = windowline([...words, "--out", at("b.xlsx"), "--json", at("b.json")], "", {
    TZ: "America/St_Johns",
    LANG: "tr_TR.UTF-8",
  });
  expect([first.status, second.status]).toEqual([0, 0]);
  expect(readFileSync(at("a.xlsx")).equals(readFileSync(at("b.xlsx")))).toBe(true);
  expect(readFileSync(at("a.json")).equals(readFileSync(at("b.json")))).toBe(true);
  expect(first.stdout).toContain(at("a.xlsx"));
  expect(first.stderr).toBe("");
});

test("JSON holds the contract's keys, plain numbers, and no rows of single children", () => {
  const json = JSON.parse(readFileSync(at("a.json"), "utf8"));
  expect(Object.keys(json)).toEqual(["tool", "settings", "input", "findings", "tables", "provenance"]);
  expect(json.tables.map(({ id }: { id: string }) => id)).not.toContain("skill-status");
  expect(readFileSync(at("a.json"), "utf8")).not.toMatch(/AF-\d{4}/);
  for (const { rows, used, leftOut } of json.input) {
    const out = Object.values<number>(leftOut).reduce((sum, n) => sum + n, 0);
    expect(used + out).toBe(rows);
  }
  expect(json.provenance.fingerprint).toMatch(/^[0-9a-f]{64}$/);
});

test("a report can be run again from the settings that it carries", () => {
  const { settings } = JSON.parse(readFileSync(at("a.json"), "utf8"));
  const words = ["asOf", "from", "correctBelow", "correctUntil", "edges", "recheck", "level", "seed"].flatMap(
    (name) => [`--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`, String(settings[name])],
  );
  expect(windowline(["report", BOOK, ...words, "--json", at("again.json")]).status).toBe(0);
  expect(readFileSync(at("again.json")).equals(readFileSync(at("a.json")))).toBe(true);
});

test("skill-status comes only when it is named", () => {
  expect(report("--tables", "skill-status", "--json", at("status.json")).status).toBe(0);
  const json = JSON.parse(readFileSync(at("status.json"), "utf8"));
  expect(json.tables.map(({ id }: { id: string }) => id)).toEqual(["skill-status"]);
});

test.each([
  [["report", BOOK], 2, /--as-of/],
  [["report", BOOK, "--as-of", "30.9.2026"], 2, /Give --as-of as 2026-09-30\./],
  [["report", BOOK, "--as-of", "2026-09-30", "--by", "Colour"], 2, /no column "Colour".*Site, Therapist/],
  [["report", BOOK, "--as-of", "2026-09-30", "--tables", "met"], 2, /no table "met".*met-by-band/],
  [["report", BOOK, "--as-of", "2026-09-30", "--out", BOOK], 2, /nothing was written/],
  [["report", BOOK, "--as-of", "2026-09-30", "--json", at("x.xlsx"), "--out", at("x.xlsx")], 2, /named twice/],
  [["report", BOOK, "--as-of", "2001-01-01", "--json", at("early.json")], 2, /before the first record.*later date/],
  [
    ["report", BOOK, "--as-of", "2026-09-30", "--level", "1.5", "--json", at("l.json")],
    2,
    /level must be a share from/,
  ],
  [["report", at("none.xlsx"), "--as-of", "2026-09-30"], 3, /cannot be read \(no such file\)/],
  [["report", "package.json", "--as-of", "2026-09-30"], 3, /not an Excel workbook/],
  [["check", "tests/oracle"], 3, /no workbook of records .* is in this folder/],
])("%j ends with %i and one sentence", (words, status, message) => {
  const before = readdirSync(folder);
  const run = windowline(words as string[]);
  expect(run.status).toBe(status);
  expect(run.stderr).toMatch(message as RegExp);
  expect(run.stderr).not.toMatch(/ at .*\.c?js/);
  expect(run.stdout).toBe("");
  expect(readdirSync(folder)).toEqual(before);
});

test("never overwrites a file that it did not make", () => {
  writeFileSync(at("mine.xlsx"), "my own notes");
  const run = report("--out", at("mine.xlsx"));
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(/not made by Windowline/);
  expect(readFileSync(at("mine.xlsx"), "utf8")).toBe("my own notes");
  copyFileSync(at("a.xlsx"), at("own.xlsx"));
  expect(report("--out", at("own.xlsx")).status).toBe(0);
});

test("check lists every finding with its cell, exits 1 where a person should look, and leaves the workbook alone", () => {
  const before = statSync(FAULTS).mtimeMs;
  const run = windowline(["check", FAULTS, "--json", at("findings.json")]);
  expect(run.status).toBe(1);
  const { findings } = JSON.parse(readFileSync(at("findings.json"), "utf8"));
  expect(findings.length).toBeGreaterThan(50);
  for (const { sheet, cell } of findings) expect(run.stdout).toContain(`${sheet}!${cell}`);
  expect(statSync(FAULTS).mtimeMs).toBe(before);
});

test("findings carry no id of a child", () => {
  expect(readFileSync(at("findings.json"), "utf8")).not.toMatch(/AF-?\d{3}/);
});

test("decisions settle what a person settled, and a bad file of decisions says what is wrong", () => {
  writeFileSync(at("bad.json"), '{"decisions": [{"kind": "guess"}]}');
  const bad = windowline(["check", FAULTS, "--decisions", at("bad.json")]);
  expect(bad.status).toBe(2);
  expect(bad.stderr).toContain(at("bad.json"));
});

test("call speaks JSON on standard input and output", () => {
  const call = (name: string, input: string) => windowline(["call", name], input);
  expect(JSON.parse(call("COHORT.GESTATIONDAYS", '["28+3"]').stdout)).toEqual([[199]]);
  expect(JSON.parse(call("COHORT.SHARE", "[0, 0]").stdout)).toMatchObject({ error: "#N/A" });
  expect(call("COHORT.GESTATIONDAYS", "28+3").status).toBe(2);
});

test("sample writes the same invented workbook for the same seed", () => {
  const words = ["sample", "--children", "20", "--seed", "5"];
  expect(windowline([...words, "--out", at("s1.xlsx")]).status).toBe(0);
  expect(windowline([...words, "--out", at("s2.xlsx")]).status).toBe(0);
  expect(readFileSync(at("s1.xlsx")).equals(readFileSync(at("s2.xlsx")))).toBe(true);
  expect(windowline(["check", at("s1.xlsx")]).stdout).toContain("rows used");
  expect(existsSync(at("s1.xlsx.tmp"))).toBe(false);
});
