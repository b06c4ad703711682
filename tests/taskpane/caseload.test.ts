import { makePage, type PageSubject } from "../../src/report/pages/make-page";
import { reportOf } from "../support/report-of";
import { HostFailure } from "../../src/workbook/host";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { removeAdded, savePage } from "../../taskpane/jobs/after-build";
import { addPage, listChildren } from "../../taskpane/jobs/caseload";
import { openPane } from "../../taskpane/jobs/open";
import { cancelJob } from "../../taskpane/jobs/pane";
import { settingsOf } from "../records/book";
import { SKILL_ROWS } from "../tables/caseload/program";
import { bookOf, sampleBook } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

const AS_OF = "2026-09-30";
const CANARY = "Quillfeather";

async function opened(host: MemoryHost, therapist: string | null = null) {
  const test = paneOver(host, { writeFile: () => Promise.resolve(new Uint8Array([1, 2, 3])) });
  await openPane(test.pane);
  const { dispatch, state } = test.pane.store;
  dispatch({ type: "entry changed", name: "asOf", value: AS_OF });
  if (therapist !== null) dispatch({ type: "therapist chosen", therapist });
  return { ...test, state, caseload: () => state().caseload };
}

/** Children who differ in one skill alone, each under the therapist given; ids hold the canary. */
function program(therapists: readonly (string | null)[], heading = "Therapist"): WorkbookIn {
  const children = therapists.map((code, n) => [`${CANARY}-${n}`, "2025-08-15", code, "2025-09-01"]);
  return bookOf({
    Children: [["Child", "Birth date", heading, "Enrolled"], ...children],
    Observations: [
      ["Child", "Skill", "Date", "Result"],
      ...children.map(([id]) => [id, "strolls", "2026-09-01", "not met"]),
      [`${CANARY}-0`, "cdc1", "2026-05-01", "met"],
      [`${CANARY}-0`, "cdc1", "2026-09-01", "lost"],
    ],
    Skills: SKILL_ROWS,
  });
}

test("the lines are those of the table caseload of the same workbook, in the same order", async () => {
  const { pane, caseload, state } = await opened(new MemoryHost(sampleBook()), "T01");
  await listChildren(pane);
  const report = reportOf(sampleBook(), settingsOf({ asOf: AS_OF }), ["caseload"]);
  const own = report.tables[0]?.rows.filter(([therapist]) => therapist === "T01") ?? [];
  expect(own.length).toBeGreaterThan(2);
  const lines = caseload().listed?.lines.map((line) => [
    line.child,
    line.priority,
    line.reasons.join(" "),
    line.nextStep,
  ]);
  expect(lines).toEqual(own.map(([, child, , priority, reason, nextStep]) => [child, priority, reason, nextStep]));
  expect(caseload().listed?.title).toMatch(new RegExp(`^Caseload of T01: ${own.length} children, `));
  expect(caseload().listed?.notes.join(" ")).toMatch(/Nothing here is a diagnosis/);
  expect(state().told).toEqual({ tone: "done", text: `Listed: ${own.length} children, the most urgent first.` });
});

test("the plan is the beginning of the table recheck-plan, for as many visits as are asked for", async () => {
  const { pane, caseload } = await opened(new MemoryHost(sampleBook()), "T01");
  pane.store.dispatch({ type: "visits entered", visits: "3" });
  await listChildren(pane);
  const report = reportOf(sampleBook(), settingsOf({ asOf: AS_OF }), ["recheck-plan"]);
  const rows = report.tables[0]?.rows.filter(
    ([code, , , , why]) => code === "T01" && /^Visit [123]:/.test(String(why)),
  );
  const visits = caseload().listed?.visits ?? [];
  expect(visits).toHaveLength(3);
  const looks = visits.flatMap(({ child, looks: all }) => all.flatMap(({ names }) => names.map(() => child)));
  expect(looks).toEqual(rows?.map(([, , child]) => child));
});

const SUBJECTS: readonly (readonly [string, PageSubject, string, string])[] = [
  ["a child", { kind: "child", id: "" }, "Child page as of September 30, 2026", "child-page-2026-09-30.xlsx"],
  [
    "a therapist",
    { kind: "therapist", code: "T01" },
    "Caseload page as of September 30, 2026",
    "caseload-2026-09-30.xlsx",
  ],
];

test.each(SUBJECTS)(
  "the page of %s is the one that the command line writes, marked for whom it is, saved and removed again",
  async (_, about, label, fileName) => {
    const host = new MemoryHost(sampleBook());
    const { pane, caseload, state } = await opened(host, "T01");
    await listChildren(pane);
    const first = caseload().listed?.lines[0]?.child ?? "";
    const subject = about.kind === "child" ? { ...about, id: first } : about;
    await addPage(pane, subject);
    const { rowHeights, ...expected } = makePage(sampleBook(), settingsOf({ asOf: AS_OF }), [], subject);
    expect(host.added).toHaveLength(1);
    const { rowHeights: heights, ...sheet } = host.added[0]!.sheet;
    expect(sheet).toEqual(expected);
    expect([...(heights ?? [])]).toEqual([...(rowHeights ?? [])]);
    expect(sheet.print).toMatchObject({
      fit: "one page",
      landscape: false,
      header: expect.stringMatching(about.kind === "child" ? /^For the family/ : /^INTERNAL/),
    });
    expect(host.added[0]?.name).toMatch(about.kind === "child" ? /\(family\)$/ : /\(internal\)$/);
    expect(state().told?.text).toMatch(/^The page was added after your own sheets as “.* \((internal|family)\)”/);
    expect(state().receipts.map((each) => each.label)).toEqual([label]);
    await savePage(pane);
    expect(host.saved.map((each) => each.fileName)).toEqual([fileName]);
    await removeAdded(pane, state().receipts[0]!);
    expect(host.added).toHaveLength(0);
    expect(state().told?.text).toBe(`Removed: ${label}: 1 sheet.`);
  },
);

test("pages keep to the number of visits, the settings and the day of the list", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, caseload } = await opened(host, "T01");
  pane.store.dispatch({ type: "visits entered", visits: "2" });
  await listChildren(pane);
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2026-06-30" });
  expect(caseload().isOld).toBe(true);
  await addPage(pane, { kind: "therapist", code: "T01" });
  const expected = makePage(sampleBook(), settingsOf({ asOf: AS_OF }), [], { kind: "therapist", code: "T01" }, 2);
  expect(host.added[0]?.sheet.rows).toEqual(expected.rows);
});

test.each(["Reading the workbook", "Writing the page", "Adding the sheets"])(
  "cancelling a page at the step %s leaves nothing, and the list stays",
  async (step) => {
    const host = new MemoryHost(sampleBook());
    const { pane, caseload, state } = await opened(host, "T01");
    await listChildren(pane);
    const stop = pane.store.subscribe(() => {
      if (state().job?.progress?.step === step && !state().job?.cancelling) cancelJob(pane);
    });
    await addPage(pane, { kind: "therapist", code: "T01" });
    stop();
    expect(host.added).toHaveLength(0);
    expect(state().receipts).toHaveLength(0);
    expect(caseload().page).toBeNull();
    expect(caseload().listed).not.toBeNull();
    expect(state().told).toEqual({ tone: "done", text: "Canceled. No page was added to the workbook." });
    await addPage(pane, { kind: "therapist", code: "T01" });
    expect(host.added).toHaveLength(1);
  },
);

test("cancelling the list leaves the pane as it was", async () => {
  const { pane, caseload, state } = await opened(new MemoryHost(sampleBook()), "T01");
  const stop = pane.store.subscribe(() => {
    if (state().job?.progress?.step === "Putting observations in order" && !state().job?.cancelling) cancelJob(pane);
  });
  await listChildren(pane);
  stop();
  expect(caseload().listed).toBeNull();
  expect(state().told?.text).toBe("Canceled. List the children again when you are ready.");
});

test("where there are several therapists one is to be chosen, and nothing is listed until then", async () => {
  const { pane, caseload, state } = await opened(new MemoryHost(program(["T2", "T1", null, "T1"])));
  await listChildren(pane);
  expect(state().told).toEqual({ tone: "stopped", text: "Choose a therapist, then list the children." });
  expect(caseload()).toMatchObject({ listed: null, refused: 1, seen: true });
  expect(state().found?.therapists).toEqual(["", "T1", "T2"]);
  pane.store.dispatch({ type: "therapist chosen", therapist: "" });
  await listChildren(pane);
  expect(caseload().listed?.lines.map(({ child }) => child)).toEqual([`${CANARY}-2`]);
});

test.each([
  ["no column Therapist", program([null, null], "Nickname"), null, 2],
  ["one therapist", program(["T1", "T1"]), ["T1"], 2],
])("with %s there is nothing to choose", async (_, book, therapists, children) => {
  const { pane, caseload, state } = await opened(new MemoryHost(book));
  await listChildren(pane);
  expect(state().found?.therapists).toEqual(therapists);
  expect(caseload().listed?.children).toBe(children);
});

test("nobody followed on the day: an empty list that says what to do", async () => {
  const { pane, caseload, state } = await opened(new MemoryHost(program(["T1", "T2"])), "T2");
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2025-08-20" });
  await listChildren(pane);
  expect(caseload().listed).toMatchObject({ title: null, children: 0, lines: [], visits: [] });
  expect(state().told).toEqual({
    tone: "stopped",
    text: "No child of T2 is in the program on August 20, 2025. Choose another date, or another therapist; Records lists which rows of Children are not used.",
  });
});

test.each([
  ["asOf", "", /^A field needs checking before the children can be listed\.$/],
  ["level", "7", /^A field of Quarter needs checking .* Confidence level: must be a share/],
] as const)("%s = %j is refused before anything is read", async (name, value, message) => {
  const { pane, caseload, state, workers } = await opened(new MemoryHost(sampleBook()), "T01");
  pane.store.dispatch({ type: "entry changed", name, value });
  await listChildren(pane);
  expect(state().told?.text).toMatch(message);
  expect(caseload().refused).toBe(1);
  expect(workers[0]?.kinds).toEqual(["choices"]);
});

test("a therapist who is no longer in the records does not stay chosen", async () => {
  const host = new MemoryHost(program(["T1", "T2"]));
  const { pane, caseload } = await opened(host, "T2");
  await listChildren(pane);
  host.workbook = program(["T1", "T3"]);
  await listChildren(pane);
  expect(caseload().therapist).toBeNull();
});

test("a child who left between the list and the page: told in a sentence that names nobody, and nothing is added", async () => {
  const host = new MemoryHost(program(["T1", "T1"]));
  const { pane, caseload, state } = await opened(host);
  await listChildren(pane);
  const id = caseload().listed?.lines.at(-1)?.child ?? "";
  host.workbook = program(["T1"]);
  await addPage(pane, { kind: "child", id });
  expect(host.added).toHaveLength(0);
  expect(state().told).toEqual({
    tone: "stopped",
    text: "No child in Children has that id. Check it against the column Child.",
  });
});

test("an edit while a page is made is told, and nothing is added", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state, caseload } = await opened(host, "T01");
  await listChildren(pane);
  const stop = pane.store.subscribe(() => {
    if (state().job?.progress?.step === "Writing the page") host.workbook = sampleBook(41);
  });
  await addPage(pane, { kind: "therapist", code: "T01" });
  stop();
  expect([host.added.length, caseload().page]).toEqual([0, null]);
  expect(state().told?.text).toMatch(
    /^The records changed after they were read, so no page was added\. List the children/,
  );
});

test("where the workbook takes no sheet the page can be saved beside it", async () => {
  const host = new MemoryHost(program(["T1", "T1"]));
  host.addSheets = () => Promise.reject(new HostFailure("locked", "The structure of this workbook is protected."));
  const { pane, state, caseload } = await opened(host);
  await listChildren(pane);
  await addPage(pane, { kind: "therapist", code: "T1" });
  expect(state().told?.text).toBe("The structure of this workbook is protected.");
  expect(caseload().page).not.toBeNull();
  await savePage(pane);
  expect(host.saved).toHaveLength(1);
});

test("a child's id stands in the list, and in nothing that is kept, named or told", async () => {
  const host = new MemoryHost(program([`${CANARY} T1`, `${CANARY} T1`]));
  const { pane, state, caseload } = await opened(host);
  await listChildren(pane);
  expect(caseload().listed?.lines[0]).toMatchObject({ child: `${CANARY}-0`, priority: 1 });
  const told: unknown[] = [state().told];
  await addPage(pane, { kind: "child", id: `${CANARY}-0` });
  told.push(state().told, state().receipts, caseload().page?.fileName);
  await savePage(pane);
  const { therapists, ...found } = state().found!;
  expect(therapists).toEqual([`${CANARY} T1`]);
  told.push(state().told, host.saved[0]?.fileName, host.added[0]?.name, state().job, found);
  host.addSheets = () => Promise.reject(new TypeError(`${CANARY}-0`));
  await addPage(pane, { kind: "therapist", code: `${CANARY} T1` });
  told.push(state().told);
  expect(JSON.stringify(told)).not.toContain(CANARY);
});
