import type { JobOptions } from "../../../workbook/host";

const LONGEST_SLICE_MS = 12;

/**
 * Lets the page breathe within a long job: `rest` gives the thread back when a slice has lasted long enough, and rejects
 * once the job is cancelled.
 */
export class Slices {
  private began = performance.now();

  constructor(private readonly signal: AbortSignal) {}

  async rest(): Promise<void> {
    this.signal.throwIfAborted();
    if (performance.now() - this.began < LONGEST_SLICE_MS) return;
    await nextTurn();
    this.signal.throwIfAborted();
    this.began = performance.now();
  }
}

export function slicesOf(options: Pick<JobOptions, "signal">): Slices {
  return new Slices(options.signal);
}

/** A message, unlike a timer, is not held back to 4 ms and runs after painting and input. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
