import type { DateSystem } from "../../src/age/serial";
import { FUNCTIONS } from "../registry";
import type { Answer } from "./answer";

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

/** From this many rows in all ranges together a call goes to the worker. */
export const WORKER_FROM_ROWS = 500;

/** True for calls of many rows, and for those that need the solver: it is loaded in the worker alone. */
export function goesElsewhere(name: string, args: readonly unknown[]): boolean {
  return rowsOf(args) >= WORKER_FROM_ROWS || FUNCTIONS.get(name)?.needsSolver === true;
}

const ROWS_A_PIECE = 5_000;

/** Answers worksheet functions on a thread of its own, which the first call starts; after a failure, the next one. */
export class WorkerCalls {
  private readonly waiting = new Map<number, (answer: Answer) => void>();
  private calls = 0;
  private worker: Worker | null = null;

  constructor(private readonly newWorker: () => Worker) {}

  /** Starts the thread before the first call needs it. */
  start(): Worker {
    if (this.worker) return this.worker;
    const worker = this.newWorker();
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.settle(data.call, data.answer);
    worker.onerror = () => this.failAll();
    this.worker = worker;
    return worker;
  }

  async answer(name: string, args: readonly unknown[], dateSystem: DateSystem): Promise<Answer> {
    const call = (this.calls += 1);
    const answered = new Promise<Answer>((resolve) => this.waiting.set(call, resolve));
    for (const [argument, value] of args.entries()) if (isRange(value)) await this.sendRows(call, argument, value);
    this.send({ kind: "call", call, name, dateSystem, args: args.map((value) => (isRange(value) ? [] : value)) });
    return answered;
  }

  private async sendRows(call: number, argument: number, rows: readonly unknown[][]): Promise<void> {
    for (let from = 0; from < rows.length; from += ROWS_A_PIECE) {
      this.send({ kind: "rows", call, argument, rows: rows.slice(from, from + ROWS_A_PIECE) });
      await new Promise((resolve) => setTimeout(resolve));
    }
  }

  private send(message: ToWorker): void {
    this.start().postMessage(message);
  }

  private settle(call: number, answer: Answer): void {
    this.waiting.get(call)?.(answer);
    this.waiting.delete(call);
  }

  private failAll(): void {
    this.worker?.terminate();
    this.worker = null;
    const message =
      "The calculation stopped for lack of memory or because its script did not load. Calculate once more; if it happens again, close other workbooks and open this one anew.";
    for (const call of [...this.waiting.keys()]) this.settle(call, { error: "#VALUE!", message });
  }
}

export function rowsOf(args: readonly unknown[]): number {
  return args.reduce<number>((sum, value) => sum + (isRange(value) ? value.length : 0), 0);
}

function isRange(value: unknown): value is unknown[][] {
  return Array.isArray(value);
}
