import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { checkOutputs, writeTogether } from "../../src/cli/files";
import { releaseCsv } from "../../src/report/release/release-csv";
import { releaseText } from "../../src/report/release/release-text";
import { appendEntry, EMPTY_LEDGER, ledgerText } from "../../src/release/ledger";
import { BANDS, CONTEXT, prepared, STEPS } from "../release/support/prepared";
import { temporaryFolder } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);

test.each([
  ["csv", releaseCsv(BANDS), "skill,area,band\r\n1,2,3\r\n"],
  ["steps.csv", releaseCsv(STEPS), "\uFEFFname,born\r\n"],
  ["txt", releaseText(prepared(), CONTEXT), "Read me first: my own notes"],
  ["svg", '<?xml version="1.0"?><svg><desc>x. Drawn by Windowline.</desc></svg>', '<?xml version="1.0"?><svg/>'],
  ["png", "\u0089PNG...Software\u0000Windowlinesum.IEND", "\u0089PNG...IEND"],
  ["json", ledgerText(appendEntry(EMPTY_LEDGER, prepared().entry)), '{"my": "own"}'],
])("a file of a release (%s) is known as its own work, and one of somebody else's is not", (ending, own, other) => {
  const encoding = ending === "png" ? "latin1" : "utf8";
  writeFileSync(at(`own.${ending}`), own, encoding);
  writeFileSync(at(`other.${ending}`), other, encoding);
  expect(() => checkOutputs([], [at(`own.${ending}`)])).not.toThrow();
  expect(() => checkOutputs([], [at(`other.${ending}`)])).toThrow(/not made by Windowline/);
});

test("files are written together or not at all", () => {
  const before = readdirSync(folder);
  writeTogether([
    { file: at("a.txt"), content: "a" },
    { file: at("b.txt"), content: Uint8Array.of(98) },
  ]);
  expect([readFileSync(at("a.txt"), "utf8"), readFileSync(at("b.txt"), "utf8")]).toEqual(["a", "b"]);
  mkdirSync(at("folder"));
  const files = [
    { file: at("c.txt"), content: "c" },
    { file: at("nowhere/d.txt"), content: "d" },
  ];
  expect(() => writeTogether(files)).toThrow(/cannot all be written \(no such file\)/);
  expect(readdirSync(folder).sort()).toEqual([...before, "a.txt", "b.txt", "folder"].sort());
});
