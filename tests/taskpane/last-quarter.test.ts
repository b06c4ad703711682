/** The card of last quarter, over a worker in this process. The figures are counted on paper from the rows below. */
import { writeWorkbook } from "../../src/hosts/file/write-workbook";
import { buildReport } from "../../taskpane/jobs/build";
import { saveComparison, saveNumbers } from "../../taskpane/jobs/after-build";
import { addComparison, chooseLast, compare, repeatLast } from "../../taskpane/jobs/last-quarter";
import { readFile } from "../../taskpane/worker/read-file";
import { openPane } from "../../taskpane/jobs/open";
import type { Pane } from "../../taskpane/jobs/pane";
import { bookOf } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

type Rows = readonly (readonly (string | number)[])[];
const SKILLS: Rows = [
  ["Skill", "Label", "Area", "Opens", "Closes", "Age basis"],
  ["sits", "Sits", "gross motor", 6, 9, "chronological"],
];
const CHILDREN: Rows = ["A", "B", "C"].map((id) => [id, "2023-11-10", "North", "2024-01-10", ""]);
/** On June 30, 2024: A has met it, B was not yet seen with it, C was never checked. */
const CHECKS: Rows = [
  ["A", "sits", "2024-05-01", "met"],
  ["B", "sits", "2024-05-01", "not met"],
];
const JUNE = program(CHILDREN, CHECKS);
/** A left, D came, C was entered late, B met it in July. */
const JULY = program(
  [
    ["A", "2023-11-10", "North", "2024-01-10", "2024-07-10"],
    ...CHILDREN.slice(1),
    ["D", "2023-11-10", "North", "2024-07-15", ""],
  ],
  [...CHECKS, ["C", "sits", "2024-06-01", "met"], ["B", "sits", "2024-07-20", "met"]],
);

function program(children: Rows, checks: Rows): Record<"Children" | "Observations" | "Skills", Rows> {
  return {
    Children: [["Child", "Birth date", "Site", "Enrolled", "Left"], ...children],
    Observations: [["Child", "Skill", "Date", "Result"], ...checks],
    Skills: SKILLS,
  };
}

async function opened(sheets: Readonly<Record<string, Rows>>, asOf: string) {
  const host = new MemoryHost(bookOf(sheets));
  const writeFile = (...[made, created]: Parameters<typeof written>) => Promise.resolve(written(made, created));
  const readChangelog = () => Promise.resolve("# Changes\n\n## Unreleased\n\n- A figure changed.\n\n## 0.0.1\n");
  const { pane } = paneOver(host, { readFile, writeFile, readChangelog });
  await openPane(pane);
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: asOf });
  const last = () => pane.store.state().quarter.last;
  return { pane, host, last, told: () => pane.store.state().told?.text };
}

function written(sheets: Parameters<typeof writeWorkbook>[0], created: number): Uint8Array<ArrayBuffer> {
  return new Uint8Array(writeWorkbook(sheets, { created }));
}

function bytesOf(sheets: Readonly<Record<string, Rows>>): Uint8Array {
  const columns = Array.from({ length: 6 }, () => ({ width: 12 }));
  return written(
    Object.entries(sheets).map(([name, rows]) => ({ name, columns, rows })),
    19_800,
  );
}

function choose(pane: Pane, name: string, bytes: Uint8Array): Promise<void> {
  return chooseLast(pane, new File([bytes as Uint8Array<ArrayBuffer>], name));
}

/** What the pane saves of a report of June. */
async function numbersOfJune(): Promise<Uint8Array> {
  const { pane, host } = await opened(JUNE, "2024-06-30");
  await buildReport(pane);
  await saveNumbers(pane);
  expect(host.downloaded.map(({ fileName }) => fileName)).toEqual(["report-2024-06-30.json"]);
  return host.downloaded[0]!.bytes;
}

test("a workbook of last quarter: each headline with what it gained and lost, added and saved as sheets", async () => {
  const { pane, host, last, told } = await opened(JULY, "2024-07-31");
  await choose(pane, "june.xlsx", bytesOf(JUNE));
  expect(last()).toMatchObject({ file: { kind: "workbook", name: "june.xlsx" }, asOf: "2024-06-30" });
  await compare(pane);
  expect(told()).toBe("Compared: June 30, 2024 with July 31, 2024.");
  expect(last().compared?.bridges.map(({ sentence }) => sentence)).toEqual([
    "3 children in the program stayed 3: 1 joined and 1 left.",
    "2 up-to-date skill checks stayed 2: 1 entered late and 1 left.",
    "1 skill checks met became 2: 1 entered late, 1 left and 1 met since.",
    "1 skill checks met in gross motor became 2: 1 entered late, 1 left and 1 met since.",
  ]);
  await addComparison(pane);
  expect(host.added.map(({ name }) => name)).toEqual(expect.arrayContaining(["What changed, in brief"]));
  await saveComparison(pane);
  expect(host.saved.map(({ fileName }) => fileName)).toEqual(["what-changed-2024-07-31.xlsx"]);
  pane.store.dispatch({ type: "entry changed", name: "recheck", value: "60" });
  expect(last().isOld).toBe(true);
});

test("the numbers that were saved last quarter: compared, and made again to the byte", async () => {
  const numbers = await numbersOfJune();
  const july = await opened(JULY, "2024-07-31");
  await choose(july.pane, "june.json", numbers);
  expect(july.last().file).toMatchObject({ kind: "report", asOf: "2024-06-30" });
  await compare(july.pane);
  expect(july.last().compared).toMatchObject({ isFromReport: true });
  expect(july.last().compared?.bridges[2]?.sentence).toMatch(
    /^1 skill checks met became 2: 1 more by rows entered late/,
  );
  await repeatLast(july.pane);
  const lines = july.last().again?.lines ?? [];
  expect(lines.slice(0, 4)).toEqual([
    "Made again, and not the same.",
    "The records are not the same.",
    "Children: 4 rows, 1 row more than the 3 before.",
    "Observations: 4 rows, 2 rows more than the 2 before.",
  ]);
  const june = await opened(JUNE, "2024-06-30");
  await choose(june.pane, "june.json", numbers);
  await repeatLast(june.pane);
  expect(june.told()).toBe("Made again from the same records: the same, to the byte.");
});

test("a printed report can be made again, and says that it cannot be compared", async () => {
  const { pane, last, told } = await opened(JUNE, "2024-06-30");
  await buildReport(pane);
  const { sheets } = await pane.client.ask("file", { of: "report" }).then((bytes) => ({ sheets: bytes }));
  await choose(pane, "report.xlsx", sheets);
  expect(last().file?.kind).toBe("report workbook");
  await repeatLast(pane);
  expect(last().again).toEqual({ isSame: true, lines: [] });
  await compare(pane);
  expect(told()).toMatch(/^A printed report has no counts to compare with\./);
});

test("rows that the last report had are missed before a figure is made; the person may go on", async () => {
  const { pane, last, told } = await opened(program(CHILDREN, CHECKS.slice(1)), "2024-06-30");
  await choose(pane, "june.json", await numbersOfJune());
  await buildReport(pane);
  expect(pane.store.state().quarter.made).toBeNull();
  expect(last().lost).toEqual([
    expect.stringMatching(/^Observations has 1 row; the last report had 2\./),
    expect.stringMatching(/^Site North has 1 observation; the last report had 2\./),
  ]);
  expect(told()).toMatch(/^No report was made: /);
  await buildReport(pane, true);
  expect(pane.store.state().quarter.made).not.toBeNull();
});

test.each([
  ["notes.txt", new TextEncoder().encode("my notes"), /neither an Excel workbook nor the numbers/],
  ["torn.xlsx", new TextEncoder().encode("PK torn"), /^The file cannot be read: /],
])("%s is refused with a sentence", async (name, bytes, message) => {
  const { pane, last, told } = await opened(JUNE, "2024-06-30");
  await choose(pane, name, bytes);
  expect(told()).toMatch(message);
  expect(last().file).toBeNull();
});

test("without the day of a workbook's figures nothing is compared", async () => {
  const { pane, told } = await opened(JULY, "2024-07-31");
  await choose(pane, "june.xlsx", bytesOf(JUNE));
  pane.store.dispatch({ type: "last day entered", asOf: "" });
  await compare(pane);
  expect(told()).toMatch(/^Give the day of last quarter/);
});
