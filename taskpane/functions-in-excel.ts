import { currentDateSystem } from "../functions/date-system";
import { CellFailure, type FailureCode, forHost } from "../functions/failure";
import { FUNCTIONS, type WorksheetFunction } from "../functions/registry";
import type { Answer } from "../functions/elsewhere/answer";
import { rowsOf, WORKER_FROM_ROWS, type WorkerCalls } from "../functions/elsewhere/worker-calls";

/** The part of Excel's runtime that is used here. */
interface FunctionsRuntime {
  associate(name: string, fn: (...given: unknown[]) => unknown): void;
}

/** Registers every function anew, so that a call of many rows is answered away from the thread that Excel waits for. */
export function answerLargeCallsElsewhere(calls: () => Pick<WorkerCalls, "answer">): void {
  const runtime = (globalThis as unknown as { CustomFunctions: FunctionsRuntime }).CustomFunctions;
  for (const [name, called] of FUNCTIONS) runtime.associate(name, large(name, called, calls));
}

function large(name: string, { fn, parameters }: WorksheetFunction, calls: () => Pick<WorkerCalls, "answer">) {
  return (...given: unknown[]): unknown => {
    // Excel puts an object of its own behind the arguments.
    const args = given.slice(0, parameters.length);
    if (rowsOf(args) < WORKER_FROM_ROWS) return fn(...args);
    return calls().answer(name, args, currentDateSystem()).then(shownInExcel);
  };
}

function shownInExcel(answer: Answer): unknown[][] {
  if ("error" in answer) throw failureOf(answer);
  return answer.rows.map((row) => row.map((cell) => (typeof cell === "object" ? failureOf(cell) : cell)));
}

function failureOf({ error, message }: { readonly error: string; readonly message: string }): Error {
  return forHost(new CellFailure(error as FailureCode, message));
}
