import { WorkClient } from "../../taskpane/client/work-client";
import { handOver, takeBack } from "../../taskpane/client/hand-over";
import { CELLS_AT_ONCE } from "../../taskpane/worker/records/finding-groups";
import { partsOf, SheetsInParts } from "../../taskpane/worker/sheet-parts";
import type { SheetOut } from "../../src/workbook/sheets";
import { sampleBook } from "./books";
import { InProcessWorker } from "./in-process-worker";

test("columns are transferred, not cloned, and come back as they were", async () => {
  const book = sampleBook(10);
  const before = sampleBook(10);
  const client = new WorkClient(() => new InProcessWorker());
  const kept = await handOver(client, book, {});
  expect(book.sheets[1]?.grid.columns[0]?.values.byteLength).toBe(0);
  expect(await takeBack(client, kept, {})).toEqual(before);
});

test("columns that share a buffer cross once", async () => {
  const book = sampleBook(10);
  const shared = book.sheets.map((sheet) => ({
    ...sheet,
    grid: { ...sheet.grid, columns: [...sheet.grid.columns, sheet.grid.columns[0]] },
  }));
  const client = new WorkClient(() => new InProcessWorker());
  const kept = await handOver(client, { ...book, sheets: shared }, {});
  const back = await takeBack(client, kept, {});
  expect(back.sheets[0]?.grid.columns.at(-1)).toEqual(sampleBook(10).sheets[0]?.grid.columns[0]);
});

test("a worker that breaks down answers whoever waits, and the next question starts another", async () => {
  const workers: InProcessWorker[] = [];
  const client = new WorkClient(() => {
    const worker = new InProcessWorker();
    workers.push(worker);
    return worker;
  });
  const asked = client.ask("choices", {});
  workers[0]?.onerror?.({});
  await expect(asked).rejects.toMatchObject({ failure: { name: "WorkerMissing" } });
  expect((await client.ask("choices", {})).tables.length).toBeGreaterThan(0);
  expect(workers).toHaveLength(2);
  // one that was heard did load: something else stopped it
  const stopped = client.ask("choices", {});
  workers[1]?.onerror?.({});
  await expect(stopped).rejects.toMatchObject({ failure: { name: "WorkerStopped" } });
});

test("a question under a signal that is already aborted is not put", async () => {
  const client = new WorkClient(() => {
    throw new Error("a worker was started for nothing");
  });
  const signal = AbortSignal.abort(new Error("before"));
  await expect(client.ask("choices", {}, { signal })).rejects.toThrow("before");
});

test("sheets cross in small parts, and are whole again", () => {
  const rows = Array.from({ length: 2345 }, (_, row) => [row, `text ${row}`, null]);
  const heights = new Map([
    [0, 30],
    [2344, 12],
  ]);
  const sheet: SheetOut = { name: "A", columns: [{ width: 8 }, { width: 8 }, { width: 8 }], rows, rowHeights: heights };
  const empty: SheetOut = { name: "B", columns: [], rows: [] };
  const parts = [...partsOf([sheet, empty])];
  expect(parts.length).toBeGreaterThan(5);
  expect(Math.max(...parts.map((part) => part.rows.length * 3))).toBeLessThanOrEqual(1000);
  const whole = new SheetsInParts();
  parts.forEach((part) => whole.add(part));
  const [first, second] = whole.whole([sheet, empty]);
  expect(first?.rows).toEqual(rows);
  expect(first?.rowHeights).toEqual(heights);
  expect(second?.rows).toEqual([]);
  expect(CELLS_AT_ONCE).toBeLessThan(100);
});
