import { confirmUnderstanding, joinChildren, openCorrections, saveCorrections } from "../../taskpane/jobs/decisions";
import { readWorkbook } from "../../taskpane/jobs/read";
import { openIn } from "../../taskpane/state/understanding";
import { nextStep } from "../../taskpane/words/records";
import { book, sheet } from "../records/book";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

/** As programs keep them: everyday headings, a grid of own skills, a mark that nothing explains, one child twice. */
const KIDS = sheet("Kids", [
  ["Kid #", "DOB", "Clinic", "Worker", "Intake", "Exit"],
  ["K-01", "2024-03-01", "Mill St", "T1", "2024-06-01", null],
  ["K-02", "2024-04-01", "Mill Street", "T1", "2024-07-01", null],
  ["K-03", "2024-05-09", "Mill Street", "T2", "2024-08-01", null],
  ["K03", "2024-05-09", "Mill Street", "T2", "2024-08-01", null],
]);
const MOTOR = sheet("Motor", [
  ["Kid #", "Visit", "Rolls over", "Sits alone", "Walks alone"],
  ["K-01", "2024-09-01", "Y", "N", "E"],
  ["K-02", "2024-09-02", "Y", "E", "N"],
  ["K-03", "2024-09-03", "N", "N", "N"],
]);

async function read() {
  const host = new MemoryHost(book([KIDS, MOTOR]));
  const made = paneOver(host);
  await readWorkbook(made.pane);
  return { host, pane: made.pane, state: made.pane.store.state };
}

const choose = (word: string) =>
  ({ type: "choice made", made: { choice: { kind: "word", word, means: "emerging" } } }) as const;

test("a word that nobody explained is the next step, then one confirmation, and its cells are used", async () => {
  const { pane, state } = await read();
  expect(state().understanding?.words).toMatchObject([{ word: "E", cells: 2, means: null }]);
  expect(stepOf(state()).does).toBe("answer");
  pane.store.dispatch(choose("E"));
  expect(stepOf(state()).does).toBe("confirm");
  await confirmUnderstanding(pane);
  expect(stepOf(state()).does).toBe("quarter");
  const checks = state().found?.tables.find(({ table }) => table === "Observations");
  expect([checks?.rows, checks?.used]).toEqual([9, 9]);
});

test("a choice outlives a reading, and is no correction until it is confirmed", async () => {
  const { host, pane, state } = await read();
  pane.store.dispatch(choose("E"));
  await readWorkbook(pane);
  expect(state().understanding?.words).toMatchObject([{ word: "E", means: "emerging" }]);
  expect(host.decisions).toBeNull();
  expect(state().unsaved.corrections).toBe(true);
});

test("two rows of one child are joined by one act, and suggested no longer", async () => {
  const { pane, state } = await read();
  const [pair] = state().understanding?.sameChild ?? [];
  expect(pair).toMatchObject({ first: "Kids!A4", second: "Kids!A5" });
  await joinChildren(pane, pair as NonNullable<typeof pair>);
  expect(state().understanding?.sameChild).toEqual([]);
  await confirmUnderstanding(pane);
  expect(state().decisions.list).toContainEqual({ kind: "same-child", child: "K-03", alias: "K03" });
  expect(state().understanding?.sameChild).toEqual([]);
});

test("the file of one quarter settles the next, settings too; one of another workbook changes nothing", async () => {
  const { host, pane } = await read();
  pane.store.dispatch(choose("E"));
  pane.store.dispatch({ type: "entry changed", name: "correctUntil", value: "36 corrected" });
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2024-09-30" });
  await confirmUnderstanding(pane);
  await saveCorrections(pane);
  const text = new TextDecoder().decode(host.saved[0]?.bytes);
  const next = await read();
  expect(await openCorrections(next.pane, text)).toEqual([]);
  expect(stepOf(next.state()).does).toBe("quarter");
  expect(next.state().quarter.entries).toEqual({ correctUntil: "36 corrected" });

  const other = paneOver(
    new MemoryHost(
      book([
        sheet("Staff", [
          ["Name", "Desk"],
          ["Ana", "4"],
        ]),
      ]),
    ),
  );
  await readWorkbook(other.pane);
  expect(await openCorrections(other.pane, text)).toEqual([expect.stringMatching(/another workbook/)]);
  expect(other.pane.store.state().decisions.list).toEqual([]);
});

function stepOf(
  state: Parameters<typeof openIn>[0] & {
    readonly foundIsOld: boolean;
    readonly found: { readonly failure: string | null } | null;
  },
) {
  return nextStep({
    isRead: true,
    isOld: state.foundIsOld,
    failure: state.found?.failure ?? null,
    open: openIn(state),
  });
}
