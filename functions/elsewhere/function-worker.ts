import { config } from "zod";
import { setDateSystem } from "../date-system";
import { answerOf } from "./answer";
import type { FromWorker, ToWorker } from "./worker-calls";

// zod would otherwise ask whether it may compile, which a strict policy reports.
config({ jitless: true });

/** Rows of calls that have not come in whole yet, by argument. */
const incoming = new Map<number, Map<number, unknown[][]>>();

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "rows") return collect(data);
  const ranges = incoming.get(data.call);
  incoming.delete(data.call);
  setDateSystem(data.dateSystem);
  const args = data.args.map((value, at) => ranges?.get(at) ?? value);
  const reply: FromWorker = { call: data.call, answer: answerOf(data.name, args) };
  self.postMessage(reply);
};

function collect({ call, argument, rows }: Extract<ToWorker, { kind: "rows" }>): void {
  const ranges = incoming.get(call) ?? new Map<number, unknown[][]>();
  incoming.set(call, ranges);
  ranges.set(argument, [...(ranges.get(argument) ?? []), ...rows]);
}
