import { reportSheets } from "../../src/report/sheets/report-sheets";
import { reportOf } from "../support/report-of";
import { parseSettings, type Settings } from "../../src/settings/settings";
import { removeAdded, saveReport } from "../../taskpane/jobs/after-build";
import { buildReport } from "../../taskpane/jobs/build";
import { keepDecisions, openCorrections } from "../../taskpane/jobs/decisions";
import { loadDecisions } from "../../taskpane/jobs/load-decisions";
import { openPane } from "../../taskpane/jobs/open";
import { cancelJob } from "../../taskpane/jobs/pane";
import { readWorkbook } from "../../taskpane/jobs/read";
import { moreCells, showCell } from "../../taskpane/jobs/show-cells";
import { bookOf, faultyBook, sampleBook, SMALL } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

const AS_OF = "2026-09-30";

/** With one table alone, since the estimates of the others take their time; the same code carries them all. */
async function opened(host: MemoryHost) {
  const test = paneOver(host, { writeFile: () => Promise.resolve(new Uint8Array([1, 2, 3])) });
  await openPane(test.pane);
  test.pane.store.dispatch({ type: "entry changed", name: "asOf", value: AS_OF });
  for (const { id } of test.pane.store.state().choices.tables) {
    if (id !== "met-by-band") test.pane.store.dispatch({ type: "table chosen", id, chosen: false });
  }
  return { ...test, state: () => test.pane.store.state() };
}

function settingsAsOf(asOf: string): Settings {
  const parsed = parseSettings({ asOf }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join());
  return parsed.settings;
}

test("opening reads no cell, and knows the tables, the name and the receipts", async () => {
  const host = new MemoryHost(sampleBook());
  host.read = () => Promise.reject(new Error("read unasked"));
  const { state } = await opened(host);
  expect(state().bookName).toBe("Program.xlsx");
  expect(state().choices.tables.map(({ id }) => id)).toContain("met-by-band");
  expect(state().told).toBeNull();
});

test("internal tables are not chosen until somebody chooses them", async () => {
  const { pane } = paneOver(new MemoryHost(sampleBook()));
  await openPane(pane);
  const state = pane.store.state;
  const internal = state().choices.tables.filter((each) => each.internal);
  expect(internal.map(({ id }) => id)).toContain("skill-status");
  expect(internal.every(({ name }) => name.includes("internal"))).toBe(true);
  expect(state().quarter.tables.some((id) => internal.some((each) => each.id === id))).toBe(false);
});

test("the report's sheets are those that the core makes of the same workbook", async () => {
  const book = sampleBook();
  const host = new MemoryHost(book);
  const { pane, state } = await opened(host);
  await buildReport(pane);
  const tables = state().quarter.tables;
  const expected = reportSheets(reportOf(sampleBook(), settingsAsOf(AS_OF), tables));
  expect(host.added.map(({ sheet }) => sheet.rows)).toEqual(expected.map(({ rows }) => rows));
  expect(host.added.map(({ sheet }) => sheet.charts ?? [])).toEqual(expected.map(({ charts }) => charts ?? []));
  const heights = host.added.map(({ sheet }) => [...(sheet.rowHeights ?? [])]);
  expect(heights).toEqual(expected.map(({ rowHeights }) => [...(rowHeights ?? [])]));
  expect(state().told?.tone).toBe("done");
  expect(state().receipts).toHaveLength(1);
});

test("what was added can be removed, and nothing else is", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state } = await opened(host);
  await buildReport(pane);
  await buildReport(pane);
  const [first] = state().receipts;
  if (first) await removeAdded(pane, first);
  expect(state().receipts).toHaveLength(1);
  expect(host.added.map(({ name }) => name)).toEqual(state().receipts[0]?.sheets);
});

test.each(["Reading the workbook", "Reading the records", "Adding the sheets"])(
  "cancelling at the step %s leaves nothing",
  async (step) => {
    const host = new MemoryHost(sampleBook());
    const { pane, state } = await opened(host);
    const stop = pane.store.subscribe(() => {
      if (state().job?.progress?.step === step && !state().job?.cancelling) cancelJob(pane);
    });
    await buildReport(pane);
    stop();
    expect(host.added).toHaveLength(0);
    expect(state().receipts).toHaveLength(0);
    expect(state().quarter.made).toBeNull();
    expect(state().told).toEqual({ tone: "done", text: "Canceled. Nothing was added to the workbook." });
  },
);

test("after a cancel the report can be made", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state, workers } = await opened(host);
  const stop = pane.store.subscribe(() => {
    if (state().job?.progress?.step === "Putting observations in order" && !state().job?.cancelling) cancelJob(pane);
  });
  await buildReport(pane);
  stop();
  await buildReport(pane);
  expect(host.added.length).toBeGreaterThan(3);
  expect(workers).toHaveLength(2);
});

test("an edit during the run is told, and nothing is added", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state } = await opened(host);
  const stop = pane.store.subscribe(() => {
    if (state().job?.progress?.step === "Putting observations in order") host.workbook = sampleBook(41);
  });
  await buildReport(pane);
  stop();
  expect(host.added).toHaveLength(0);
  expect(state().told).toEqual({
    tone: "stopped",
    text: "A cell was changed while the report was made. Nothing was added; make the report again.",
  });
});

test("a report without an as-of date is refused before anything is read", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state, workers } = await opened(host);
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "" });
  await buildReport(pane);
  expect(state().told?.text).toMatch(/fill in the as-of date/);
  expect(state().quarter.seen).toContain("asOf");
  expect(workers[0]?.kinds).toEqual(["choices"]);
});

test.each([
  ["asOf", "1999-01-01", /comes before the first record/],
  ["by", ["No such column"], /has no column "No such column"/],
] as const)("%s = %s is told in the core's own words", async (name, value, message) => {
  const { pane, state } = await opened(new MemoryHost(sampleBook()));
  pane.store.dispatch({ type: "entry changed", name, value });
  await buildReport(pane);
  expect(state().told?.tone).toBe("stopped");
  expect(state().told?.text).toMatch(message);
});

test("a missing table is told with its name, and its findings are listed", async () => {
  const { Children, Observations } = SMALL;
  const { pane, state } = await opened(new MemoryHost(bookOf({ Children, Observations })));
  await readWorkbook(pane);
  expect(state().told?.tone).toBe("stopped");
  expect(state().told?.text).toMatch(/^Skills: /);
  expect(state().found?.failure).toBe(state().told?.text);
});

test("a failure nobody foresaw keeps its message to itself", async () => {
  const host = new MemoryHost(sampleBook());
  host.addSheets = () => Promise.reject(new TypeError("K-7 Zora Canary"));
  const { pane, state } = await opened(host);
  await buildReport(pane);
  expect(state().told?.text).toMatch(/Nothing was added to the workbook.*TypeError/);
  expect(state().told?.text).not.toMatch(/Canary/);
});

test("no text of a cell of Children reaches the pane with the report", async () => {
  const canary = "Zora Canary";
  const [headings, ...children] = SMALL.Children;
  const rows = children.map((row) => [...row, canary]);
  const book = bookOf({ ...SMALL, Children: [[...headings, "Name"], ...rows] });
  const { pane, state } = await opened(new MemoryHost(book));
  await buildReport(pane);
  expect(state().quarter.made).not.toBeNull();
  expect(JSON.stringify(state())).not.toContain(canary);
});

test("a decision settles what it is about, is kept by the host, and can be revoked", async () => {
  const host = new MemoryHost(bookOf(SMALL));
  const { pane, state } = await opened(host);
  await readWorkbook(pane);
  const unknown = () => state().found?.groups.find(({ rule }) => rule === "skill-unknown");
  expect(unknown()?.repair).toEqual({ kind: "skill-alias", writings: [{ text: "sitting up", cells: 1 }] });
  const decision = { kind: "skill-alias", skill: "sits", alias: "sitting up" } as const;
  expect(await keepDecisions(pane, [decision])).toEqual([]);
  expect(unknown()).toBeUndefined();
  expect(host.decisions).toEqual({ decisions: [decision] });
  await keepDecisions(pane, [{ ...decision, revoked: true }]);
  expect(unknown()?.count).toBe(1);
});

test("decisions carry to the next quarter: by the host, and by a file", async () => {
  const decision = { kind: "same-child", child: "K-1", alias: "K-9" } as const;
  const host = new MemoryHost(bookOf(SMALL));
  host.decisions = { decisions: [decision] };
  const next = await opened(host);
  expect(next.state().decisions.list).toEqual([decision]);
  const other = await opened(new MemoryHost(bookOf(SMALL)));
  expect(await openCorrections(other.pane, JSON.stringify({ decisions: [decision] }))).toEqual([]);
  expect(other.state().decisions.list).toEqual([decision]);
  expect(await openCorrections(other.pane, "no json")).toHaveLength(1);
});

test("contradicting decisions are refused with the reason, and nothing is kept", async () => {
  const host = new MemoryHost(bookOf(SMALL));
  const { pane } = await opened(host);
  const alias = "sitting up";
  const both = [
    { kind: "skill-alias", skill: "sits", alias },
    { kind: "skill-alias", skill: "stands", alias },
  ] as const;
  expect(await keepDecisions(pane, both)).toEqual([expect.stringMatching(/Revoke one of the two/)]);
  expect(host.decisions).toBeNull();
});

test("decisions that cannot be read are left as they are, and said", async () => {
  const host = new MemoryHost(bookOf(SMALL));
  host.decisions = { decisions: [{ kind: "guess" }] };
  const { pane, state } = await opened(host);
  await loadDecisions(pane);
  expect(state().decisions.messages).toHaveLength(1);
  expect(host.decisions).toEqual({ decisions: [{ kind: "guess" }] });
});

test("more cells of a group are listed as they are asked for, and each can be shown", async () => {
  const looks = Array.from({ length: 60 }, () => ["K-1", "unheard of", "2025-08-01", "met"]);
  looks.forEach((row, at) => (row[2] = `2025-08-${String(1 + (at % 28)).padStart(2, "0")}`));
  looks.forEach((row, at) => (row[1] = `unheard of ${at}`));
  const book = bookOf({ ...SMALL, Observations: [...SMALL.Observations, ...looks] });
  const host = new MemoryHost(book);
  const { pane, state } = await opened(host);
  await readWorkbook(pane);
  const at = state().found?.groups.findIndex(({ rule }) => rule === "skill-unknown") ?? -1;
  const group = () => state().found?.groups[at];
  expect(group()?.count).toBe(61);
  expect(group()?.cells).toHaveLength(25);
  await moreCells(pane, at);
  await moreCells(pane, at);
  expect(new Set(group()?.cells.map(({ cell }) => cell)).size).toBe(61);
  await showCell(pane, "Observations", group()?.cells[0]?.cell ?? "");
  expect(host.shown).toEqual(["Observations!B4"]);
});

test("the report is saved as a file under the name of its as-of date", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane } = await opened(host);
  await buildReport(pane);
  await saveReport(pane);
  expect(host.saved).toEqual([
    {
      fileName: "report-2026-09-30.xlsx",
      bytes: new Uint8Array([1, 2, 3]),
      mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    },
  ]);
});

test("headings are mapped with the cell they stand in, and further ones can group", async () => {
  const { pane, state } = await opened(new MemoryHost(bookOf(SMALL)));
  await readWorkbook(pane);
  const children = state().found?.tables.find(({ table }) => table === "Children");
  expect(children?.columns.find(({ means }) => means === "Birth date")).toEqual({
    means: "Birth date",
    required: true,
    heading: "Date of birth",
    cell: "B1",
  });
  expect(children?.columns.find(({ means }) => means === "Family")?.heading).toBeNull();
  expect(children?.further).toEqual(["Home language"]);
  const columns = state().found?.groupColumns ?? [];
  expect(columns.filter(({ values }) => values > 1)).toEqual([
    { heading: "Site", values: 2 },
    { heading: "Home language", values: 2 },
  ]);
  expect(state().found?.lastLook).toBe("2025-09-15");
  expect(state().found?.quarterEnd).toBe("2025-09-30");
});

test("every fault of the faulty sample is in a group, and the counts add up", async () => {
  const { pane, state } = await opened(new MemoryHost(faultyBook()));
  await readWorkbook(pane);
  const { groups, counts } = state().found ?? { groups: [], counts: { error: 0, warning: 0, note: 0 } };
  const total = groups.reduce((sum, { count }) => sum + count, 0);
  expect(total).toBe(counts.error + counts.warning + counts.note);
  expect(groups.length).toBeGreaterThan(20);
});

test("a wide sheet is named for what it is", async () => {
  const wide = [
    ["Child", "sits"],
    ["K-1", "2025-09-15"],
    ["K-2", null],
  ];
  const { Children, Skills } = SMALL;
  const { pane, state } = await opened(new MemoryHost(bookOf({ Children, Skills, Looks: wide })));
  await readWorkbook(pane);
  const looks = state().found?.tables.find(({ table }) => table === "Observations");
  expect(looks?.wide).toBe(true);
  expect(looks?.columns.map(({ means }) => means)).toEqual(["Child"]);
});
