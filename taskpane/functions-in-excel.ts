import type { Answerer } from "../functions/associate";
import { currentDateSystem } from "../functions/date-system";
import { CellFailure, type FailureCode, forHost } from "../functions/failure";
import type { Answer } from "../functions/elsewhere/answer";
import { goesElsewhere, type WorkerCalls } from "../functions/elsewhere/worker-calls";

/** Answers a call at once, or one of much work away from the thread that Excel waits for. */
export function answererOver(calls: Pick<WorkerCalls, "answer">): Answerer {
  return (name, fn, args, canceled) => {
    if (!goesElsewhere(name, args)) return fn(...args);
    return calls.answer(name, args, currentDateSystem(), canceled).then(shownInExcel);
  };
}

function shownInExcel(answer: Answer): unknown[][] {
  if ("error" in answer) throw failureOf(answer);
  return answer.rows.map((row) => row.map((cell) => (typeof cell === "object" ? failureOf(cell) : cell)));
}

function failureOf({ error, message }: { readonly error: string; readonly message: string }): Error {
  return forHost(new CellFailure(error as FailureCode, message));
}
