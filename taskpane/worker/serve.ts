import { RecordsUnusable } from "../../src/records/unusable";
import { NobodyOfThatName } from "../../src/report/pages/make-page";
import { NothingByThen } from "../../src/report/run";
import { UnknownColumn } from "../../src/tables/groups";
import type { Failure, FromWorker, ToWorker } from "./messages";
import { ReleaseStopped } from "./release-stopped";
import type { Work } from "./work";

export type Post = (message: FromWorker, transfer?: ArrayBuffer[]) => void;

/** Answers one message of the pane. */
export async function serve(work: Work, message: ToWorker, post: Post): Promise<void> {
  const { id } = message;
  try {
    const { answer, transfer } = await answerOf(work, message, post);
    post({ id, kind: "done", answer }, transfer);
  } catch (error) {
    post({ id, kind: "failed", failure: failureOf(error) });
  }
}

interface Answered {
  readonly answer: unknown;
  readonly transfer?: ArrayBuffer[];
}

async function answerOf(work: Work, message: ToWorker, post: Post): Promise<Answered> {
  const { id } = message;
  switch (message.kind) {
    case "choices":
      return { answer: work.choices() };
    case "open":
      return { answer: work.open(message.ask) };
    case "strings":
      return { answer: work.strings(message.ask) };
    case "check":
      return { answer: work.check(message.ask) };
    case "cells":
      return { answer: work.cells(message.ask) };
    case "build":
      return { answer: work.build(message.ask, { onStep: (step) => post({ id, kind: "step", step }) }) };
    case "caseload":
      return { answer: work.caseload(message.ask, { onStep: (step) => post({ id, kind: "step", step }) }) };
    case "page":
      return { answer: work.page(message.ask, { onStep: (step) => post({ id, kind: "step", step }) }) };
    case "ledger":
      return { answer: (await work.releases()).ledger(message.ask.text) };
    case "release":
      return { answer: await work.release(message.ask, { onStep: (step) => post({ id, kind: "step", step }) }) };
    case "releaseRows":
      return { answer: (await work.releases()).rows(message.ask.table, message.ask.from) };
    case "releaseSentences":
      return { answer: (await work.releases()).sentences(message.ask.table, message.ask.from) };
    case "prose":
      return { answer: await work.prose(message.ask, { onStep: (step) => post({ id, kind: "step", step }) }) };
    case "releaseFile":
      return bytesOf(await work.releaseFile(message.ask));
    case "sheets":
      return { answer: work.sheets(message.ask, (part) => post({ id, kind: "rows", part })) };
    case "giveBack":
      return work.giveBack();
    case "file":
      return bytesOf(await work.file(message.ask));
    case "chart":
      return { answer: await work.chart(message.ask) };
  }
}

function bytesOf(bytes: Uint8Array<ArrayBuffer>): Answered {
  return { answer: bytes, transfer: [bytes.buffer] };
}

/** Any other failure keeps its message to itself: it might carry the text of a cell. */
function failureOf(error: unknown): Failure {
  if (error instanceof UnknownColumn) return { name: "UnknownColumn", message: error.message };
  if (error instanceof NothingByThen) return { name: "NothingByThen", message: error.message };
  if (error instanceof NobodyOfThatName) return { name: "NobodyOfThatName", message: error.message };
  if (error instanceof ReleaseStopped) return { name: "ReleaseStopped", message: error.message };
  if (error instanceof RecordsUnusable) return { name: "RecordsUnusable", message: error.message };
  return { name: error instanceof Error ? error.name : "Error", message: null };
}
