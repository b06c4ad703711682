import type { Progress } from "../../src/workbook/host";
import type { Answer, Ask, FromWorker, RequestKind, RowsPart } from "../worker/messages";
import { WorkFailed } from "./work-failed";

/** The part of a Worker that is used, so that a test can stand in for it. */
export interface WorkerLike {
  postMessage(message: unknown, transfer: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: { preventDefault?: () => void }) => void) | null;
}

export interface AskOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
  readonly onRows?: (part: RowsPart) => void;
  readonly transfer?: Transferable[];
}

interface Pending extends AskOptions {
  readonly resolve: (answer: unknown) => void;
  readonly reject: (reason: unknown) => void;
}

/** Asks the worker, and starts another one when the work is cancelled: that is how a computation is stopped. */
export class WorkClient {
  private worker: WorkerLike | null = null;
  private readonly pending = new Map<number, Pending>();
  private lastId = 0;

  /** `onEmptied` is told when what the worker held is gone with it. */
  constructor(
    private readonly startWorker: () => WorkerLike,
    private readonly onEmptied: () => void = () => undefined,
  ) {}

  ask<K extends RequestKind>(kind: K, ask: Ask<K>, options: AskOptions = {}): Promise<Answer<K>> {
    const { signal } = options;
    if (signal?.aborted) return Promise.reject(signal.reason);
    const worker = (this.worker ??= this.started());
    const id = (this.lastId += 1);
    const stop = () => this.stop(signal?.reason);
    signal?.addEventListener("abort", stop, { once: true });
    const answer = new Promise<unknown>((resolve, reject) => this.pending.set(id, { ...options, resolve, reject }));
    worker.postMessage({ id, kind, ask }, options.transfer ?? []);
    return answer.finally(() => signal?.removeEventListener("abort", stop)) as Promise<Answer<K>>;
  }

  /** Ends whatever is being done; the next question starts afresh, with no workbook held. */
  stop(reason: unknown): void {
    if (this.worker) this.onEmptied();
    this.worker?.terminate();
    this.worker = null;
    const all = [...this.pending.values()];
    this.pending.clear();
    for (const { reject } of all) reject(reason);
  }

  private started(): WorkerLike {
    const worker = this.startWorker();
    // one that never said a word did not load
    let wasHeard = false;
    worker.onmessage = ({ data }) => {
      wasHeard = true;
      this.receive(data);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      this.stop(new WorkFailed({ name: wasHeard ? "WorkerStopped" : "WorkerMissing", message: null }));
    };
    return worker;
  }

  private receive(message: FromWorker): void {
    const pending = this.pending.get(message.id);
    if (!pending) return;
    if (message.kind === "step") pending.onProgress?.({ step: message.step, done: 0, of: 0 });
    else if (message.kind === "rows") pending.onRows?.(message.part);
    else {
      this.pending.delete(message.id);
      if (message.kind === "done") pending.resolve(message.answer);
      else pending.reject(new WorkFailed(message.failure));
    }
  }
}
