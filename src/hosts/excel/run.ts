/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../workbook/host";
import { inWords, richCode, UNANSWERED } from "./failures";
import { holdOf } from "./holds";

/** How long to wait for a person, or for Excel. */
export interface Patience {
  /** Between two tries while Excel takes no request. */
  readonly retryMs: number;
  readonly mostRetries: number;
  /** After this long without an answer the person is told. */
  readonly tellMs: number;
  /** How long a request that is out may still be answered after a cancel. */
  readonly graceMs: number;
  /** The longest wait for an answer where nobody can cancel. */
  readonly answerMs: number;
}

/** Two minutes: time to finish a note, not to go home. A cancel is obeyed within two seconds, cleaning up included. */
export const PATIENT: Patience = { retryMs: 500, mostRetries: 240, tellMs: 8_000, graceMs: 700, answerMs: 30_000 };

/** A cancel came while Excel had not answered: what was asked may still be done when it answers. */
export class Unanswered extends Error {
  override readonly name = "Unanswered";

  constructor(
    /** The cancel's own reason. */
    readonly reason: unknown,
    /** Settles when Excel answers after all; it never rejects. */
    readonly answered: Promise<void>,
  ) {
    super("Excel did not answer before the cancel");
  }
}

/** A batch is told the how-manieth try this is, from 0: an earlier try may have done a part of its work. */
export type Batch<T> = (context: Excel.RequestContext, attempt: number) => Promise<T>;

/**
 * Runs one batch, and waits while Excel takes none: a cell is being edited, another workbook is in front, or Excel is busy.
 * A batch may run again from its start, so it holds at most one request that changes anything, and does no harm twice.
 */
export function inExcel<T>(batch: Batch<T>, patience: Patience, options?: JobOptions): Promise<T> {
  return patiently((attempt) => Excel.run((context) => batch(context, attempt)), patience, options);
}

/** The same for a batch that changes nothing: where Excel refuses it, the words speak of reading. */
export function readInExcel<T>(batch: Batch<T>, patience: Patience, options?: JobOptions): Promise<T> {
  return patiently((attempt) => Excel.run((context) => batch(context, attempt)), patience, options, "reading");
}

/** Asks Excel again for as long as it only has to be waited for, and puts its errors into words. */
export async function patiently<T>(
  ask: (attempt: number) => Promise<T>,
  patience: Patience,
  options?: JobOptions,
  doing: "reading" | "changing" = "changing",
): Promise<T> {
  for (let attempt = 0; ; attempt += 1) {
    options?.signal.throwIfAborted();
    try {
      return await answerOf(ask(attempt), patience, options);
    } catch (error) {
      const hold = richCode(error) === null ? null : await answerOf(holdOf(error), patience, options);
      if (!hold) throw inWords(error, doing);
      if (attempt >= Math.min(patience.mostRetries, hold.mostRetries)) throw new HostFailure(hold.kind, hold.sentence);
      options?.onProgress({ step: hold.sentence, done: 0, of: 0 });
      await pause(patience.retryMs * hold.growth(attempt), options?.signal);
    }
  }
}

/** The answer. Where it does not come, the person is told; a cancel ends the wait, and a time limit where there is no cancel. */
function answerOf<T>(asked: Promise<T>, patience: Patience, options: JobOptions | undefined): Promise<T> {
  const settled = asked.then(
    () => undefined,
    () => undefined,
  );
  const timers: ReturnType<typeof setTimeout>[] = [];
  const after = (ms: number, then: () => void) => timers.push(setTimeout(then, ms));
  const signal = options?.signal;
  let stop = (): void => undefined;
  const givenUp = new Promise<never>((_, reject) => {
    if (!options) return after(patience.answerMs, () => reject(new HostFailure("unanswered", UNANSWERED)));
    after(patience.tellMs, () => options.onProgress({ step: UNANSWERED, done: 0, of: 0 }));
    stop = () => after(patience.graceMs, () => reject(new Unanswered(signal?.reason, settled)));
    if (options.signal.aborted) stop();
    else options.signal.addEventListener("abort", stop, { once: true });
  });
  return Promise.race([asked, givenUp]).finally(() => {
    timers.forEach((timer) => clearTimeout(timer));
    signal?.removeEventListener("abort", stop);
  });
}

export function pause(ms: number, signal: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve, reject) => {
    const stop = () => {
      clearTimeout(timer);
      reject(signal?.reason as Error);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener("abort", stop);
      resolve();
    }, ms);
    signal?.addEventListener("abort", stop, { once: true });
  });
}
