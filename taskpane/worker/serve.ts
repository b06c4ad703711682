import { RecordsUnusable } from "../../src/records/unusable";
import { NobodyOfThatName } from "../../src/report/pages/nobody";
import { buffersOf } from "./load";
import type { Answer, Answerers, Failure, FromWorker, RequestKind, ToWorker, WorkEvents } from "./messages";
import { Refused } from "./refused";

export type Post = (message: FromWorker, transfer?: ArrayBuffer[]) => void;

/** Answers one message of the pane. */
export async function serve(work: Answerers, message: ToWorker, post: Post): Promise<void> {
  const { id } = message;
  const events: WorkEvents = {
    onStep: (step) => post({ id, kind: "step", step }),
    onRows: (part) => post({ id, kind: "rows", part }),
  };
  try {
    const answer = await answerOf(work, message, events);
    post({ id, kind: "done", answer }, transferOf(message.kind, answer));
  } catch (error) {
    post({ id, kind: "failed", failure: failureOf(error) });
  }
}

/** The compiler sees that each request has its own answer, not that this is the one that was asked for. */
function answerOf(work: Answerers, { kind, ask }: ToWorker, events: WorkEvents): unknown {
  const answer: (ask: never, events: WorkEvents) => unknown = work[kind];
  return answer.call(work, ask as never, events);
}

/** What is handed over, and not copied. */
function transferOf(kind: RequestKind, answer: unknown): ArrayBuffer[] {
  if (answer instanceof Uint8Array) return [answer.buffer as ArrayBuffer];
  return kind === "giveBack" ? buffersOf(answer as Answer<"giveBack">) : [];
}

/** Any other failure keeps its message to itself: it might carry the text of a cell. */
function failureOf(error: unknown): Failure {
  if (error instanceof NobodyOfThatName) return { name: "NobodyOfThatName", message: error.message };
  if (error instanceof Refused) return { name: error.name, message: error.message };
  if (error instanceof RecordsUnusable) return { name: "RecordsUnusable", message: error.message };
  return { name: error instanceof Error ? error.name : "Error", message: null };
}
