import type { CDPSession, Page } from "playwright-core";

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/**
 * The longest task of the page's own thread while `work` runs, in milliseconds of processor time: waiting for a machine
 * that is busy with something else is no fault of the page.
 */
export async function longestTaskMs(page: Page, work: () => Promise<void>): Promise<number> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const traceConfig = { includedCategories: ["toplevel", "disabled-by-default-devtools.timeline", "__metadata"] };
  await session.send("Tracing.start", { transferMode: "ReportEvents", traceConfig });
  await work();
  await ended(session);
  const threads = events.filter(({ name, args }) => name === "thread_name" && args.name === "CrRendererMain");
  const isMain = ({ pid, tid }: TraceEvent) => threads.some((each) => each.pid === pid && each.tid === tid);
  const tasks = events.filter((event) => event.name.includes("RunTask") && isMain(event));
  if (tasks.length === 0) throw new Error("longestTaskMs: the trace holds no task");
  return Math.max(...tasks.map(({ tdur }) => tdur ?? 0)) / 1000;
}

async function ended(session: CDPSession): Promise<void> {
  const complete = new Promise((resolve) => session.once("Tracing.tracingComplete", resolve));
  await session.send("Tracing.end");
  await complete;
}
