import type { DateSystem } from "../../src/age/serial";
import { Memory } from "../memo";
import { FUNCTIONS } from "../registry";
import type { Answer, AnsweredCell } from "./answer";

/** To the worker: a call comes in pieces, so that no single copy of its rows holds up the page. */
export type ToWorker =
  | { readonly kind: "rows"; readonly call: number; readonly argument: number; readonly rows: readonly unknown[][] }
  | {
      readonly kind: "call";
      readonly call: number;
      readonly name: string;
      readonly dateSystem: DateSystem;
      /** Ranges stand empty where their rows were sent before. */
      readonly args: readonly unknown[];
    };

export interface FromWorker {
  readonly call: number;
  readonly answer: Answer;
}

/** From this much work on, about 50 ms, a call goes to the worker: so many usual rows (`Work`). */
export const WORKER_FROM_ROWS = 500;

/** True for calls of much work, and for those that need the solver: it is loaded in the worker alone. */
export function goesElsewhere(name: string, args: readonly unknown[]): boolean {
  const called = FUNCTIONS.get(name);
  return called !== undefined && (called.needsSolver || called.work(...args) >= WORKER_FROM_ROWS);
}

const ROWS_A_PIECE = 5_000;

const STOPPED: Answer = { error: "#VALUE!", message: "This calculation was stopped before it ended." };

const FAILED: Answer = {
  error: "#VALUE!",
  message:
    "The calculation stopped for lack of memory or because its script did not load. Calculate once more; if it happens again, close other workbooks and open this one anew.",
};

interface Call {
  readonly id: number;
  readonly name: string;
  readonly args: readonly unknown[];
  readonly dateSystem: DateSystem;
  readonly settle: (answer: Answer) => void;
}

/**
 * Answers worksheet functions on a thread of its own, which the first call starts; after a failure, the next one. One call
 * is sent at a time, so that a call nobody waits for any more can be taken back, and the one that runs be stopped with its
 * thread. What was answered is remembered on this side: a question asked again crosses no thread.
 */
export class WorkerCalls {
  private readonly memory = new Memory<AnsweredCell>();
  private waiting: Call[] = [];
  private running: Call | null = null;
  private calls = 0;
  private worker: Worker | null = null;

  constructor(private readonly newWorker: () => Worker) {}

  /** Starts the thread before the first call needs it. */
  start(): Worker {
    if (this.worker) return this.worker;
    const worker = this.newWorker();
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.answered(data);
    worker.onerror = () => this.failAll();
    this.worker = worker;
    return worker;
  }

  async answer(
    name: string,
    args: readonly unknown[],
    dateSystem: DateSystem,
    canceled?: AbortSignal,
  ): Promise<Answer> {
    if (canceled?.aborted) return STOPPED;
    const key = this.memory.keyOf(name, args, dateSystem);
    const known = this.memory.at(key);
    if (known) return { rows: known };
    const answer = await this.ask({ id: (this.calls += 1), name, args, dateSystem }, canceled);
    // What failed may do better the next time.
    if ("rows" in answer) this.memory.keep(key, answer.rows);
    return answer;
  }

  private ask(question: Omit<Call, "settle">, canceled: AbortSignal | undefined): Promise<Answer> {
    return new Promise((settle) => {
      const call = { ...question, settle };
      canceled?.addEventListener("abort", () => this.stop(call));
      this.waiting.push(call);
      void this.runNext();
    });
  }

  private async runNext(): Promise<void> {
    if (this.running) return;
    const call = this.waiting.shift() ?? null;
    this.running = call;
    if (!call) return;
    const { id, name, args, dateSystem } = call;
    for (const [argument, value] of args.entries()) if (isRange(value)) await this.sendRows(call, argument, value);
    this.send(call, {
      ...{ kind: "call", call: id, name, dateSystem },
      args: args.map((value) => (isRange(value) ? [] : value)),
    });
  }

  private async sendRows(call: Call, argument: number, rows: readonly unknown[][]): Promise<void> {
    for (let from = 0; from < rows.length && call === this.running; from += ROWS_A_PIECE) {
      this.send(call, { kind: "rows", call: call.id, argument, rows: rows.slice(from, from + ROWS_A_PIECE) });
      await new Promise((resolve) => setTimeout(resolve));
    }
  }

  private send(call: Call, message: ToWorker): void {
    if (call === this.running) this.start().postMessage(message);
  }

  private answered({ call: id, answer }: FromWorker): void {
    const call = this.running;
    if (call?.id !== id) return;
    this.running = null;
    call.settle(answer);
    void this.runNext();
  }

  private stop(call: Call): void {
    this.waiting = this.waiting.filter((each) => each !== call);
    if (this.running === call) {
      this.endThread();
      void this.runNext();
    }
    call.settle(STOPPED);
  }

  private failAll(): void {
    const calls = [...(this.running ? [this.running] : []), ...this.waiting];
    this.waiting = [];
    this.endThread();
    for (const call of calls) call.settle(FAILED);
  }

  private endThread(): void {
    this.worker?.terminate();
    this.worker = null;
    this.running = null;
  }
}

function isRange(value: unknown): value is unknown[][] {
  return Array.isArray(value);
}
