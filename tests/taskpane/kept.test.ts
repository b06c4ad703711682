import { HostFailure } from "../../src/workbook/host";
import { removeAdded } from "../../taskpane/jobs/after-build";
import { buildReport } from "../../taskpane/jobs/build";
import { keepDecisions } from "../../taskpane/jobs/decisions";
import { openPane } from "../../taskpane/jobs/open";
import { cancelJob, listReceipts, runJob } from "../../taskpane/jobs/pane";
import { readWorkbook } from "../../taskpane/jobs/read";
import { bookOf, sampleBook, SMALL } from "./books";
import { MemoryHost } from "./memory-host";
import { paneOver } from "./pane-over";

const FIRST = { kind: "same-child", child: "K-1", alias: "K-9" } as const;
const SECOND = { kind: "skill-alias", skill: "sits", alias: "sitting up" } as const;

/** A host that fails a call so many times before it answers. */
function failing<K extends "loadDecisions" | "receipts">(host: MemoryHost, call: K, times: number): void {
  const real = host[call].bind(host) as () => Promise<unknown>;
  let left = times;
  host[call] = (() => {
    if (left <= 0) return real();
    left -= 1;
    return Promise.reject(new HostFailure("unknown", "Excel refused a step (GeneralException)."));
  }) as MemoryHost[K];
}

async function opened(host: MemoryHost) {
  const { pane } = paneOver(host);
  await openPane(pane);
  return { pane, state: () => pane.store.state() };
}

describe("corrections that could not be read at opening", () => {
  const kept = () => {
    const host = new MemoryHost(bookOf(SMALL));
    host.decisions = { decisions: [FIRST] };
    return host;
  };

  test("are said to be unread, with the reason, and are not taken for none", async () => {
    const host = kept();
    failing(host, "loadDecisions", 1);
    const { state } = await opened(host);
    expect(state().decisions.unread).toContain("GeneralException");
    expect(state().bookName).toBe("Program.xlsx");
  });

  test("are asked for again before one is kept, and stay", async () => {
    const host = kept();
    failing(host, "loadDecisions", 1);
    const { pane, state } = await opened(host);
    expect(await keepDecisions(pane, [SECOND])).toEqual([]);
    expect(host.decisions).toEqual({ decisions: [FIRST, SECOND] });
    expect(state().decisions).toEqual({ list: [FIRST, SECOND], unread: null, messages: [] });
  });

  test("are never written over while they cannot be read", async () => {
    const host = kept();
    failing(host, "loadDecisions", 9);
    const { pane } = await opened(host);
    expect(await keepDecisions(pane, [SECOND])).toEqual([expect.stringContaining("GeneralException")]);
    expect(host.decisions).toEqual({ decisions: [FIRST] });
  });

  test("keep a reading and a report from being made without them", async () => {
    const host = kept();
    failing(host, "loadDecisions", 3);
    const { pane, state } = await opened(host);
    await readWorkbook(pane);
    expect(state().told).toEqual({ tone: "stopped", text: expect.stringContaining("corrections kept with this") });
    pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2025-09-30" });
    await buildReport(pane);
    expect(state().told?.text).toContain("nothing was made without them");
    expect(host.added).toEqual([]);
    await readWorkbook(pane);
    expect(state().decisions.list).toEqual([FIRST]);
  });
});

test("a correction that a person wrote into the workbook is in force at the next reading", async () => {
  const host = new MemoryHost(bookOf(SMALL));
  const { pane, state } = await opened(host);
  await readWorkbook(pane);
  const unknown = () => state().found?.groups.some(({ rule }) => rule === "skill-unknown");
  expect(unknown()).toBe(true);
  host.decisions = { decisions: [SECOND] };
  await readWorkbook(pane);
  expect([unknown(), state().decisions.list]).toEqual([false, [SECOND]]);
});

test("a report that stands is told as done where only the listing fails, and can be listed again", async () => {
  const host = new MemoryHost(sampleBook());
  const { pane, state } = await opened(host);
  pane.store.dispatch({ type: "entry changed", name: "asOf", value: "2026-09-30" });
  for (const { id } of state().choices.tables) {
    if (id !== "met-by-band") pane.store.dispatch({ type: "table chosen", id, chosen: false });
  }
  failing(host, "receipts", 1);
  await buildReport(pane);
  expect(state().told?.tone).toBe("done");
  expect(state().receiptsUnread).toContain("GeneralException");
  await listReceipts(pane);
  expect([state().receiptsUnread, state().receipts.length]).toEqual([null, 1]);
  failing(host, "receipts", 1);
  await removeAdded(pane, state().receipts[0]!);
  expect(state().told).toEqual({ tone: "done", text: expect.stringContaining("Removed") });
});

test("a cancel ends a job within two seconds, whatever the job waits for, and the pane can go on", async () => {
  const { pane, state } = await opened(new MemoryHost(bookOf(SMALL)));
  const job = runJob(pane, "building", () => new Promise(() => undefined));
  const from = performance.now();
  cancelJob(pane);
  await job;
  expect(performance.now() - from).toBeLessThan(2000);
  expect(state().told?.text).toContain("A sheet may still appear");
  await readWorkbook(pane);
  expect(state().found).not.toBeNull();
});

test("what a host finishes after its job ended is told then", async () => {
  const { pane, state } = await opened(new MemoryHost(bookOf(SMALL)));
  let finish: (text: string) => void = () => undefined;
  const later = new Promise<string>((resolve) => (finish = resolve));
  await runJob(pane, "building", () => Promise.reject(new HostFailure("left behind", "May still appear.", later)));
  expect(state().told).toEqual({ tone: "stopped", text: "May still appear." });
  finish("The unfinished sheet was removed.");
  await new Promise((resolve) => setTimeout(resolve, 10));
  expect(state().told).toEqual({ tone: "done", text: "The unfinished sheet was removed." });
});
