import { readSheetCells } from "../../../src/hosts/page/cells/read-sheet";
import { openedWorkbook } from "../../../src/hosts/page/snapshot/opened-workbook";
import { Slices } from "../../../src/hosts/page/snapshot/slices";
import { CELL } from "../../../src/workbook/cells";
import { GridBuilder } from "../../../src/workbook/grid-builder";
import { bookOf, contentsOf, quietly } from "./books";

const ROWS = 50_000;

test("50,000 rows are laid out and read back, and the thread is given back meanwhile", async () => {
  const grid = manyRows();
  const laidOut = await withTurns(() => openedWorkbook("book", bookOf(grid), quietly()));
  expect(laidOut.turns).toBeGreaterThan(2);
  const own = laidOut.result.sheets["sheet-0"]?.cellData as never;
  const showsDate = ({ s }: { s?: unknown }) => s === "date" || s === "date-in-header";
  const read = await withTurns(() =>
    readSheetCells({ own, spilled: {}, showsDate }, 1900, new Slices(new AbortController().signal)),
  );
  expect(read.turns).toBeGreaterThan(2);
  expect(JSON.stringify(contentsOf(read.result)) === JSON.stringify(contentsOf(grid))).toBe(true);
}, 60_000);

test("a cancelled job stops at its next rest", async () => {
  const cancel = new AbortController();
  const slices = new Slices(cancel.signal);
  await slices.rest();
  cancel.abort(new Error("cancelled"));
  await expect(slices.rest()).rejects.toThrow("cancelled");
});

function manyRows() {
  const builder = new GridBuilder();
  for (let row = 0; row < ROWS; row += 1) {
    builder.text(row, 0, `AF-${row % 400}`);
    builder.text(row, 1, `skill-${row % 60}`);
    builder.number(row, 2, 45_000 + (row % 900), CELL.date);
    builder.text(row, 3, row % 2 ? "met" : "not met");
  }
  return builder.build();
}

/** How often another task of the thread had its turn while the job ran. */
async function withTurns<T>(job: () => Promise<T>): Promise<{ result: T; turns: number }> {
  const { port1, port2 } = new MessageChannel();
  let turns = 0;
  port1.onmessage = () => {
    turns += 1;
    port2.postMessage(null);
  };
  port2.postMessage(null);
  await new Promise((resolve) => setTimeout(resolve, 20));
  turns = 0;
  const result = await job();
  port1.close();
  return { result, turns };
}
