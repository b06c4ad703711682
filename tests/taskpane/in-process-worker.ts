import type { WorkerLike } from "../../taskpane/client/work-client";
import type { ToWorker } from "../../taskpane/worker/messages";
import { serve } from "../../taskpane/worker/serve";
import { Work, type WorkTools } from "../../taskpane/worker/work";

/** The pane's worker in the test's own process: messages are cloned, and buffers transferred, as between threads. */
export class InProcessWorker implements WorkerLike {
  onmessage: WorkerLike["onmessage"] = null;
  onerror: WorkerLike["onerror"] = null;
  readonly kinds: string[] = [];
  private ended = false;
  private readonly work: Work;

  constructor(tools: Partial<WorkTools> = {}) {
    this.work = new Work({
      writeFile: unwanted,
      drawChart: unwanted,
      loadReleases: unwanted,
      readFile: unwanted,
      readChangelog: unwanted,
      ...tools,
    });
  }

  postMessage(message: unknown, transfer: Transferable[]): void {
    const arrived = structuredClone(message, { transfer }) as ToWorker;
    this.kinds.push(arrived.kind);
    setTimeout(() => {
      if (this.ended) return;
      void serve(this.work, arrived, (answer, back = []) => {
        const data = structuredClone(answer, { transfer: back });
        setTimeout(() => !this.ended && this.onmessage?.({ data }), 0);
      });
    }, 0);
  }

  terminate(): void {
    this.ended = true;
  }
}

function unwanted(): Promise<never> {
  return Promise.reject(new RangeError("this test asks for no file, no chart and no release"));
}
