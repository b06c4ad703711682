import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { checkLedgerStands, ledgerFrom } from "../../src/cli/release-checks";
import { refusalText } from "../../src/cli/release-summary";
import { readWorkbook } from "../../src/hosts/file/read-workbook";
import { readRecords } from "../../src/records/read-records";
import { usualSettings } from "../../src/settings/settings";
import { BOOK, temporaryFolder, windowline } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);
const WORDS = ["release", BOOK, "--as-of", "2026-09-30", "--tables", "referrals,referral-steps,ratings"];
const release = (...words: string[]) => windowline([...WORDS, ...words]);

/** All formats, into a folder of its own. */
function everything(name: string, env: Readonly<Record<string, string>>) {
  mkdirSync(at(name));
  const out = ["--out", at(`${name}/r.xlsx`), "--ledger", at(`${name}/ledger.json`), "--format", "xlsx,csv,svg,png"];
  return windowline([...WORDS, ...out], "", env);
}

const first = everything("a", { TZ: "Pacific/Apia", LANG: "C" });
const filesOf = (name: string) => readdirSync(at(name)).sort();
const read = (file: string) => readFileSync(at(file));

test("writes every format, and says what was held back, attacked, not covered, and where it lies", () => {
  expect(first.status).toBe(0);
  expect(first.stderr).toBe("");
  expect(filesOf("a")).toEqual(
    [
      "ledger.json",
      "r.xlsx",
      "r-read-me.txt",
      "r-ratings.csv",
      // of the ratings no row shows both of its numbers: there is nothing to draw
      ...["referrals", "referral-steps"].flatMap((id) => [`r-${id}.csv`, `r-${id}.svg`, `r-${id}.png`]),
    ].sort(),
  );
  for (const said of [
    /Prepared under the rule of at least 11: no count of 1 to 10/,
    /^Counts: [\d,]+; [\d,]+ shown as they are, [\d,]+ held back/m,
    /^Loss: [\d,]+; no pattern/m,
    /^Tested as a reader from outside: .*none can be proved small/m,
    /^Release log: .*ledger\.json, 1 release\. It was begun with this release/m,
    /^Last hash: [0-9a-f]{64}\./m,
    /45 CFR 164\.514 and 34 CFR 99\.31\(b\)/,
  ])
    expect(first.stdout).toMatch(said);
  for (const name of filesOf("a").filter((each) => each !== "ledger.json"))
    expect(first.stdout).toContain(at(`a/${name}`));
});

test("a second run gives the same bytes, in another time zone and language", () => {
  expect(everything("b", { TZ: "America/St_Johns", LANG: "tr_TR.UTF-8" }).status).toBe(0);
  expect(filesOf("b")).toEqual(filesOf("a"));
  for (const name of filesOf("a")) expect(read(`b/${name}`).equals(read(`a/${name}`))).toBe(true);
});

test("no file of it, and no ledger, holds an id, a family, a therapist or an observer of the records", async () => {
  const workbook = await readWorkbook(new Uint8Array(readFileSync(BOOK)));
  const { children, enrolments, observations } = readRecords(workbook, usualSettings, []);
  const therapists = enrolments.columns.find(({ heading }) => heading === "Therapist")?.values ?? [];
  const canaries = new Set([...children.ids, ...children.family, ...therapists, ...observations.observers]);
  canaries.delete("");
  expect(canaries.size).toBeGreaterThan(200);
  // pixels are packed: in them three letters turn up by chance, and the file beside it holds the same words
  for (const name of filesOf("a").filter((each) => !each.endsWith(".png"))) {
    const text = textOf(name, new Uint8Array(read(`a/${name}`)));
    for (const canary of canaries) expect(text).not.toMatch(new RegExp(`(?<![\\w-])${canary}(?![\\w-])`));
  }
});

test("no count of 1 to 10 stands in the tables, and what is held back is the one symbol", () => {
  const counts: Readonly<Record<string, readonly string[]>> = {
    referrals: ["children", "referrals", "childrenReferred"],
    "referral-steps": ["of", "count", "within45", "of45"],
    ratings: ["a", "b", "c", "d", "e", "count", "of"],
  };
  for (const [id, keys] of Object.entries(counts)) {
    const [header = "", ...lines] = read(`a/r-${id}.csv`).toString("utf8").slice(1).trimEnd().split("\r\n");
    const columns = header.split(",");
    for (const line of lines) {
      const fields = line.match(/"(?:[^"]|"")*"|[^,]+|(?<=,|^)(?=,|$)/g) ?? [];
      expect(fields).toHaveLength(columns.length);
      for (const key of keys) expect(fields[columns.indexOf(key)]).toMatch(/^(\*|0|1[1-9]|[2-9]\d|\d{3,}|)$/);
    }
  }
  expect(read("a/r-ratings.csv").toString("utf8")).toContain("*");
});

test("pictures carry their message in words, and the same picture as PNG", () => {
  const svg = read("a/r-referral-steps.svg").toString("utf8");
  expect(svg).toMatch(/<svg role="img" aria-labelledby="title desc"/);
  expect(svg).toMatch(
    /<title id="title">Referred: 12 of 12 referrals made between July 1, 2026 and September 30, 2026/,
  );
  expect(svg).toMatch(/<desc id="desc">.*held back.*Drawn by Windowline\.<\/desc>/);
  expect(svg).toContain("Held back: evaluated; eligible; plan.");
  const png = read("a/r-referral-steps.png");
  expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
  expect(png.readUInt32BE(16)).toBeGreaterThan(1000);
});

test("the ledger grows by a release of another day, keeps what stood there, and takes the same release once", () => {
  copyFileSync(at("a/ledger.json"), at("ledger.json"));
  const words = ["--out", at("again.xlsx"), "--ledger", at("ledger.json")];
  const again = release(...words);
  expect(again.status).toBe(0);
  const before = read("a/ledger.json").toString("utf8");
  const other = windowline([...WORDS.map((word) => (word === "2026-09-30" ? "2026-06-30" : word)), ...words]);
  expect(other.status).toBe(0);
  expect(other.stdout).toMatch(/Not covered:/);
  const after = read("ledger.json").toString("utf8");
  const kept = (JSON.parse(after) as { entries: { body: { cells: { shown: number | null }[] } }[] }).entries;
  for (const { shown } of kept.flatMap(({ body }) => body.cells))
    expect(shown === null || shown === 0 || shown > 10).toBe(true);
  expect(after.startsWith(before.slice(0, before.lastIndexOf("\n]}")))).toBe(true);
  expect((JSON.parse(after) as { entries: unknown[] }).entries.length).toBeGreaterThan(1);
});

test.each([
  ["ranges", /^Counts: \d+, all given as ranges\.$/m, /^plan,\d+ to \d+,/m],
  ["round", /^Counts: \d+, all rounded\.$/m, /^plan,\d*0?,/m],
])("--release-method %s", (method, said, row) => {
  const run = release(
    "--out",
    at(`${method}.xlsx`),
    "--format",
    "csv",
    "--release-method",
    method,
    "--from",
    "2025-10-01",
    "--tables",
    "referral-steps,ratings",
  );
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(said);
  expect(read(`${method}-referral-steps.csv`).toString("utf8")).toMatch(row);
  expect(existsSync(at(`${method}.xlsx`))).toBe(false);
});

test("without a ledger it says that earlier releases were not looked at", () => {
  const run = release("--out", at("alone.xlsx"));
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(/No release log was named: this release is not protected against earlier ones/);
  expect(textOf("r.xlsx", new Uint8Array(read("alone.xlsx")))).toContain("no release log was given");
});

test("a text is checked against the release, and figures against an earlier report", () => {
  writeFileSync(at("prose.txt"), "3 children of one site were referred. 12.5% came far. The visits led to more.");
  const earlier = [
    "report",
    BOOK,
    "--as-of",
    "2026-06-30",
    "--tables",
    "referrals,ratings",
    "--json",
    at("earlier.json"),
  ];
  expect(windowline(earlier).status).toBe(0);
  const run = release("--out", at("beside.xlsx"), "--prose", at("prose.txt"), "--earlier", at("earlier.json"));
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(/^Take out \(sentence 1, "3"\): /m);
  expect(run.stdout).toMatch(/^(Correct|Take out) \(sentence 2, "12\.5%"\)/m);
  expect(run.stdout).toMatch(/^Correct: .*July 1, 2026 to September 30, 2026/m);
  expect(run.stdout).toMatch(/^Advice \(sentence 3, "led to"\)/m);
  expect(run.stdout).toMatch(/Earlier report, as of June 30, 2026: /);
  expect(run.stdout).toMatch(/referral-steps: not compared, because the earlier report does not have it\./);
  expect(textOf("r.xlsx", new Uint8Array(read("beside.xlsx")))).not.toContain("Earlier report");
});

describe("bad input: one sentence, what to do, nothing written", () => {
  const out = at("no.xlsx");
  const tampered = read("a/ledger.json")
    .toString("utf8")
    .replace(/"shown":(\d+)/, '"shown":1$1');
  writeFileSync(at("tampered.json"), tampered);
  writeFileSync(at("foreign.json"), '{"tool": "Other"}');
  writeFileSync(at("report.json"), '{"tool": {"name": "Windowline"}, "settings": {}}');
  writeFileSync(at("mine.xlsx"), "my own notes");
  writeFileSync(at("text.txt"), "53 of 85");

  test.each([
    [[...WORDS, "--out", out, "--minimum-cell", "4"], 2, /minimumCell must be .* from 5 \(the floor\)/],
    [[...WORDS, "--out", out, "--preset", "10", "--floor", "11"], 2, /from 11 \(the floor\)/],
    [[...WORDS, "--out", BOOK], 2, /input of this run or named twice.*nothing was written/],
    [[...WORDS, "--out", out, "--ledger", BOOK], 2, /input of this run/],
    [[...WORDS, "--out", out, "--prose", at("text.txt"), "--ledger", at("text.txt")], 2, /input of this run/],
    [[...WORDS, "--out", at("mine.xlsx")], 2, /not made by Windowline/],
    [[...WORDS, "--out", at("nowhere/no.xlsx")], 2, /folder of .* does not exist/],
    [["release", BOOK, "--tables", "trend", "--out", out], 2, /add --as-of/],
    [
      ["release", BOOK, "--as-of", "2026-09-30", "--tables", "skill-status", "--out", out],
      2,
      /"skill-status" cannot be released\. These can: met-by-band/,
    ],
    [
      ["release", BOOK, "--as-of", "2026-09-30", "--tables", "agreement,trend", "--out", out],
      2,
      /"agreement" cannot be released/,
    ],
    [["release", BOOK, "--as-of", "2026-09-30", "--tables", "", "--out", out], 2, /cannot be released/],
    [[...WORDS, "--out", out, "--format", "pdf"], 2, /no format "pdf"\. The formats are: xlsx, csv, svg, png/],
    [[...WORDS, "--out", out, "--by", "Colour"], 2, /no column "Colour"/],
    [
      [...WORDS, "--out", out, "--ledger", at("tampered.json")],
      2,
      /tampered\.json: The release log does not verify from its release 1 of 1/,
    ],
    [[...WORDS, "--out", out, "--ledger", at("foreign.json")], 2, /not made by Windowline/],
    [[...WORDS, "--out", out, "--ledger", at("report.json")], 2, /not one that Windowline wrote/],
    [[...WORDS, "--out", out, "--earlier", at("foreign.json")], 2, /earlier report cannot be read/],
    [[...WORDS, "--out", out, "--prose", at("none.txt")], 3, /cannot be read \(no such file\)/],
    [["release", at("none.xlsx"), ...WORDS.slice(2), "--out", out], 3, /cannot be read \(no such file\)/],
  ])("%j ends with %i", (words, status, message) => {
    const before = readdirSync(folder).sort();
    const run = windowline(words as string[]);
    expect(run.status).toBe(status);
    expect(run.stderr).toMatch(message as RegExp);
    expect(run.stderr).not.toMatch(/ at .*\.c?js/);
    expect(run.stdout).toBe("");
    expect(readdirSync(folder).sort()).toEqual(before);
    expect(existsSync(out)).toBe(false);
  });

  test.each([
    ["AF-0007", /the identifier of a child/],
    ["since March 4, 2025", /a date finer than the quarter/],
  ])("a label of the records that carries %s stops the release, in every format", (canary, message) => {
    const parts = unzipSync(new Uint8Array(readFileSync(BOOK)));
    const texts = strFromU8(parts["xl/sharedStrings.xml"]!);
    const label = "Being with others";
    expect(texts).toContain(`>${label}<`);
    const planted = {
      ...parts,
      "xl/sharedStrings.xml": strToU8(texts.replaceAll(`>${label}<`, `>${label} ${canary}<`)),
    };
    writeFileSync(at("planted.xlsx"), zipSync(planted));
    for (const format of ["xlsx", "csv", "svg", "png"]) {
      const words = [
        "--as-of",
        "2026-09-30",
        "--from",
        "2025-10-01",
        "--tables",
        "ratings",
        "--format",
        format,
        "--out",
        out,
      ];
      const run = windowline(["release", at("planted.xlsx"), ...words]);
      expect(run.status).toBe(2);
      expect(run.stderr).toMatch(message);
      expect(run.stderr).toMatch(/nothing was written: change the label that carries it/);
      expect(run.stderr).not.toContain(canary);
      expect(readdirSync(folder).filter((name) => name.startsWith("no"))).toEqual([]);
    }
  });

  test("a ledger that another run has added to meanwhile", () => {
    const before = ledgerFrom(at("a/ledger.json"));
    expect(() => checkLedgerStands(at("a/ledger.json"), before)).not.toThrow();
    expect(() => checkLedgerStands(at("ledger.json"), before)).toThrow(/has changed while this release was made/);
  });

  test("a text that is longer than any that goes with a release", () => {
    writeFileSync(at("long.txt"), "a ".repeat(150_000));
    const run = release("--out", out, "--prose", at("long.txt"));
    expect([run.status, run.stderr]).toEqual([2, expect.stringMatching(/longer than 200,000 characters/)]);
  });

  test("a release that is not safe is told in one line: the first place, how many more, the repairs, and no count", () => {
    const places = Array.from({ length: 25 }, (_, index) => ({
      place: `trend, site ${index}`,
      repair: "Leave --by out.",
    }));
    const text = refusalText({ places, proposals: ["Use --edges 0,12,36."] });
    expect(text).toBe(
      "This release is not safe, so nothing was written. A small count could be worked out at trend, site 0 and 24 other places. Leave --by out. Use --edges 0,12,36.",
    );
  });
});

/** Whatever a file says: the texts of a workbook's parts, or the file itself. */
function textOf(name: string, bytes: Uint8Array): string {
  if (!name.endsWith(".xlsx")) return strFromU8(bytes, name.endsWith(".png"));
  return Object.values(unzipSync(bytes))
    .map((part) => strFromU8(part))
    .join("\n");
}
