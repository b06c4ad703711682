/** The page of the benchmark: one release in a worker of its own, and one that is cancelled as soon as it says what it does. */
import type { PreparedIn } from "./prepare";

interface Said {
  readonly step?: string;
  readonly prepared?: PreparedIn;
  readonly failed?: string;
}

function releaseIn(mostMs: number, onStep: (worker: Worker) => void): Promise<PreparedIn> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./start-worker.ts", import.meta.url));
    worker.onerror = () => reject(new Error("the worker failed"));
    worker.onmessage = ({ data }: MessageEvent<Said>) => {
      if (data.step !== undefined) onStep(worker);
      if (data.prepared) resolve(data.prepared);
      if (data.failed !== undefined) reject(new Error(data.failed));
    };
    worker.postMessage(mostMs);
  });
}

/** Milliseconds until a page that ends the worker in the midst of its work is free again. */
function cancelled(): Promise<number> {
  return new Promise((resolve, reject) => {
    releaseIn(Infinity, (worker) => {
      const began = performance.now();
      worker.terminate();
      resolve(performance.now() - began);
    }).catch(reject);
  });
}

Object.assign(globalThis, {
  releaseInWorker: (mostMs: number) => releaseIn(mostMs, () => undefined),
  cancelInWorker: cancelled,
});
