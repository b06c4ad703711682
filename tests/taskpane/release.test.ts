import { unzipSync } from "fflate";
import { loadSolver } from "../../src/hosts/file/load-solver";
import { EMPTY_LEDGER, parseLedger } from "../../src/release/ledger";
import type { PreparedRelease, Refusal } from "../../src/release/prepared";
import { readRecords } from "../../src/records/read-records";
import { prepareRelease } from "../../src/report/prepare-release";
import { printedRows } from "../../src/report/release/printed";
import { releaseCsv } from "../../src/report/release/release-csv";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import type { ReleasableId } from "../../src/tables/table";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { cancelJob } from "../../taskpane/jobs/pane";
import { openPane } from "../../taskpane/jobs/open";
import {
  checkProse,
  openLedger,
  prepare,
  prepareThatWay,
  releasePart,
  saveLedger,
  saveRelease,
  tryMore,
} from "../../taskpane/jobs/release";
import { fileOf } from "../../taskpane/worker/release/release-files";
import { Releases } from "../../taskpane/worker/release/releases";
import { settingsOf } from "../records/book";
import { asRead } from "../sample/as-read";
import { bookOf, SMALL } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

const AS_OF = "2026-09-30";
const EDGES = "0,12,36";
const TABLES = ["ratings", "referral-steps", "met-by-band"] as const;

const program = (): WorkbookIn => asRead(sampleSheets(makeSample({ children: 120, seed: 7 })));

const tools = { loadReleases: () => Promise.resolve(new Releases({ loadSolver, fileOf })) };

async function opened(
  host = new MemoryHost(program()),
  tables: readonly ReleasableId[] = ["ratings", "referral-steps"],
) {
  const test = paneOver(host, tools);
  await openPane(test.pane);
  const { dispatch, state } = test.pane.store;
  dispatch({ type: "release table chosen", id: "met-by-band", chosen: false });
  for (const id of tables) dispatch({ type: "release table chosen", id, chosen: true });
  dispatch({ type: "entry changed", name: "asOf", value: AS_OF });
  dispatch({ type: "entry changed", name: "edges", value: EDGES });
  return { ...test, host, dispatch, state, release: () => state().release };
}

async function core(tables: readonly ReleasableId[], entries: object = {}): Promise<PreparedRelease> {
  const settings = settingsOf({ asOf: AS_OF, edges: EDGES, ...entries });
  const records = readRecords(program(), settings, []);
  const ask = { settings, tables, ledger: EMPTY_LEDGER, solver: await loadSolver() };
  const found: PreparedRelease | Refusal = prepareRelease(records, ask);
  if ("places" in found) throw new Error("refused");
  return found;
}

test("the preview holds every row of the release as it leaves, in parts, with the counts and words of the core", async () => {
  const { pane, release } = await opened(undefined, TABLES);
  await prepare(pane);
  const expected = await core(TABLES);
  const { made } = release();
  expect(made?.tables.map(({ id }) => id)).toEqual(expected.tables.map(({ id }) => id));
  expect(made?.protection).toEqual(expected.protection);
  expect(made?.flags).toEqual(expected.flags);
  for (const [index, table] of expected.tables.entries()) {
    const shown = made!.tables[index]!;
    const rows = [...shown.rows];
    while (rows.length < shown.counts.rows) rows.push(...(await releasePart(pane, "releaseRows", index, rows.length)));
    const printed = printedRows(table, []);
    expect(rows).toHaveLength(printed.length);
    const width = table.columns.length - shown.headings.length;
    rows.forEach(({ figures }, row) => {
      figures.forEach((text, at) => {
        const value = printed[row]![width + at];
        expect([row, at, text === "*"]).toEqual([row, at, value === "*"]);
        if (table.columns[width + at]!.unit === "children" && typeof value === "number") {
          expect(Number(text.replaceAll(",", ""))).toBe(value);
        }
      });
    });
  }
  expect(made?.tables.some(({ rows }) => rows.some(({ figures }) => figures.includes("*")))).toBe(true);
});

test("a question brings its table; what shows more is tried, and its button asks that way", async () => {
  const { pane, dispatch, release, state, host } = await opened();
  dispatch({ type: "entry changed", name: "edges", value: "0,3,12,36" });
  const question = state().choices.questions.find(({ id }) => id === "children")!;
  dispatch({ type: "release question chosen", question, chosen: true });
  expect(release().tables).toEqual(["met-by-band"]);
  await prepare(pane);
  expect(release().made?.answers[0]?.lines[0]).toBe("Held back: All children.");
  expect(release().made?.shares).toEqual({ shown: 0, wanted: 1 });
  await tryMore(pane);
  const better = release().tried?.find(({ showsMore }) => showsMore);
  expect(better?.text).toMatch(/^with \d age groups?, cut at .*: shown\.$/);
  expect(release().made?.answers).toHaveLength(1);
  await prepareThatWay(pane, better!);
  expect(release().made?.answers[0]?.lines[0]).toMatch(/^\d+ children were in the program on September 30, 2026\.$/);
  await saveRelease(pane, "csv", "file");
  const words = unzipSync(host.downloaded[0]!.bytes)["release-2026-09-30-read-me.txt"]!;
  expect(Buffer.from(words).toString()).toContain(release().made!.answers[0]!.lines[0]);
});

test("the CSV of the pane is the CSV of the release, with its words beside it, the same bytes twice", async () => {
  const { pane, host } = await opened();
  await prepare(pane);
  await saveRelease(pane, "csv", "file");
  await saveRelease(pane, "csv", "file");
  const [first, second] = host.downloaded;
  expect(first?.fileName).toBe("release-2026-09-30-csv.zip");
  expect(Buffer.from(first!.bytes).equals(Buffer.from(second!.bytes))).toBe(true);
  const files = unzipSync(first!.bytes);
  const { tables } = await core(["ratings", "referral-steps"]);
  for (const table of tables) {
    expect(Buffer.from(files[`release-2026-09-30-${table.id}.csv`]!).toString()).toBe(releaseCsv(table));
  }
  const words = Buffer.from(files["release-2026-09-30-read-me.txt"]!).toString();
  expect(words).toMatch(/Prepared under the rule of at least 11/);
  expect(words).toMatch(/45 CFR 164\.514 and 34 CFR 99\.31\(b\)/);
  expect(words).toMatch(/no release log was given/);
  expect(Object.keys(files)).toHaveLength(tables.length + 1);
});

test("the ledger holds the release and no hidden value, opens again, and protects the next one", async () => {
  const { pane, host, release } = await opened();
  await prepare(pane);
  const hidden = release().made!.protection.hidden;
  expect(hidden).toBeGreaterThan(0);
  await saveRelease(pane, "csv", "file");
  expect(release().isSaved).toBe(true);
  await saveLedger(pane);
  const file = host.downloaded.at(-1)!;
  expect([file.fileName, file.mimeType]).toEqual(["release-ledger.json", "application/json"]);
  const text = Buffer.from(file.bytes).toString();
  const read = parseLedger(text);
  if (!("ledger" in read)) throw new Error(read.message);
  const [entry] = read.ledger.entries;
  const expected = await core(["ratings", "referral-steps"]);
  expect(entry?.body).toEqual(expected.entry);
  expect(entry?.body.cells.filter(({ shown }) => shown === null).length).toBeGreaterThanOrEqual(hidden);

  const next = await opened();
  await openLedger(next.pane, { name: "releases.json", text: () => Promise.resolve(text) });
  expect(next.release().ledger).toMatchObject({ fileName: "releases.json", releases: 1, last: "September 30, 2026" });
  await prepare(next.pane);
  expect(next.release().made?.earlier).toBe(1);
  await saveLedger(next.pane);
  expect(next.host.downloaded.at(-1)?.fileName).toBe("releases.json");
  // The same release again is not written down twice.
  expect(Buffer.from(next.host.downloaded.at(-1)!.bytes).toString()).toBe(text);
});

test.each([
  ["{", /^The release log cannot be read as JSON: .*; nothing was written\.$/],
  ['{"tool": "another"}', /^The release log named is not one that Windowline wrote/],
])("a ledger %j is refused in a sentence, and the one that was open stays", async (text, message) => {
  const { pane, release, state } = await opened();
  await openLedger(pane, { name: "other.json", text: () => Promise.resolve(text) });
  expect(release().ledger).toBeNull();
  expect(state().told).toMatchObject({ tone: "stopped", text: expect.stringMatching(message) });
});

test("a text is checked against the release: a small number of children is a leak, a shown count agrees", async () => {
  const { pane, dispatch, release, state } = await opened();
  await prepare(pane);
  dispatch({ type: "prose written", prose: "By September 30, 2026, 7 children were rated, because of our visits." });
  await checkProse(pane);
  const findings = release().checked?.findings ?? [];
  expect(findings.find(({ written }) => written === "7")?.kind).toBe("leak");
  expect(findings.some(({ kind }) => kind === "advice")).toBe(true);
  expect(state().told?.text).toMatch(/^Checked: 1 place points at a child/);
  dispatch({ type: "prose written", prose: "Other words." });
  expect(release().checked).toBeNull();
});

test("records that changed since are told, and the text is not held against them", async () => {
  const { pane, host, dispatch, release, state } = await opened();
  await prepare(pane);
  host.workbook = asRead(sampleSheets(makeSample({ children: 121, seed: 7 })));
  pane.handedOver = null;
  dispatch({ type: "prose written", prose: "7 children." });
  await checkProse(pane);
  expect(release().checked).toBeNull();
  expect(state().told?.text).toMatch(/^The records changed after the release was prepared/);
});

test.each([
  ["minimumCell", "3", /^Some fields need checking/],
  ["minimumCell", "many", /^Some fields need checking/],
  ["asOf", "", /^The release needs its day: fill in/],
  ["level", "7", /^A field of Quarter needs checking .* Confidence level: must be a share/],
] as const)("%s = %j is refused before anything is read", async (name, value, message) => {
  const { pane, dispatch, release, state, workers } = await opened();
  dispatch({ type: "entry changed", name, value });
  await prepare(pane);
  expect(state().told).toMatchObject({ tone: "stopped", text: expect.stringMatching(message) });
  expect(release().refused).toBe(1);
  expect(workers[0]?.kinds).toEqual(["choices"]);
});

test("no table chosen, and a table whose records are not there: a sentence, and nothing prepared", async () => {
  const none = await opened(undefined, []);
  await prepare(none.pane);
  expect(none.state().told?.text).toBe("No table is chosen: tick at least one.");
  const small = await opened(new MemoryHost(bookOf(SMALL)), ["referrals"]);
  await prepare(small.pane);
  expect(small.state().told?.text).toMatch(
    /^The workbook has no table of referrals, so “Referrals” cannot be released/i,
  );
  expect(small.release().made).toBeNull();
});

test.each(["Reading the workbook", "Loading the solver", "Protecting small counts"])(
  "cancelling at the step %s leaves nothing",
  async (step) => {
    const { pane, host, release, state } = await opened();
    const stop = pane.store.subscribe(() => {
      if (state().job?.progress?.step === step && !state().job?.cancelling) cancelJob(pane);
    });
    await prepare(pane);
    stop();
    expect(release()).toMatchObject({ made: null, refusal: null });
    expect([host.saved, host.downloaded, host.added]).toEqual([[], [], []]);
    expect(state().told).toEqual({ tone: "done", text: "Canceled. Nothing was prepared, and nothing was written." });
  },
);

test("whatever changes what was asked makes the release old, and an old one is not saved", async () => {
  const { pane, host, dispatch, release } = await opened();
  await prepare(pane);
  dispatch({ type: "entry changed", name: "scanMonths", value: "12" });
  expect(release().isOld).toBe(false);
  dispatch({ type: "entry changed", name: "minimumCell", value: "5" });
  expect(release().isOld).toBe(true);
  await saveRelease(pane, "csv", "file");
  await saveLedger(pane);
  expect(host.downloaded).toEqual([]);
});

test("in Excel a release can open as a new workbook, and is never a sheet of this one", async () => {
  const { pane, host, state } = await opened();
  await prepare(pane);
  host.savesAs = "opened";
  await saveRelease(pane, "csv", "opened");
  expect(host.saved).toHaveLength(1);
  expect(host.added).toHaveLength(0);
  expect(state().told?.text).toBe("Opened as a new workbook, not saved yet.");
});

test("what an earlier release of a lower rule gives away refuses this one: places and repairs, no count, nothing to save", async () => {
  const first = await opened(undefined, ["ratings"]);
  first.dispatch({ type: "entry changed", name: "minimumCell", value: "1" });
  first.dispatch({ type: "entry changed", name: "floor", value: "1" });
  await prepare(first.pane);
  await saveLedger(first.pane);
  const text = Buffer.from(first.host.downloaded[0]!.bytes).toString();
  const { pane, host, release, state } = await opened(undefined, ["ratings"]);
  await openLedger(pane, { name: "releases.json", text: () => Promise.resolve(text) });
  await prepare(pane);
  const { made, refusal } = release();
  expect(made).toBeNull();
  expect(refusal?.places.map(({ place }) => place).join()).toMatch(/^ratings: /);
  expect(refusal?.places.every(({ repair }) => repair.length > 0)).toBe(true);
  expect(refusal?.places.map(({ place }) => place).join()).not.toMatch(/\d+ child/);
  expect(state().told).toEqual({ tone: "stopped", text: "This release is not safe. Nothing was written." });
  await saveRelease(pane, "csv", "file");
  await saveLedger(pane);
  expect(host.downloaded).toEqual([]);
});
