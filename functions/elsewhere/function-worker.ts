import { config } from "zod";
import { setDateSystem } from "../date-system";
import { rememberElsewhere } from "../memo";
import { FUNCTIONS } from "../registry";
import { hasSolver, setSolver } from "../solver";
import { answerOf } from "./answer";
import { loadSolver } from "./load-solver";
import type { FromWorker, ToWorker } from "./worker-calls";

// zod would otherwise ask whether it may compile, which a strict policy reports.
config({ jitless: true });
rememberElsewhere();

/** Rows of calls that have not come in whole yet, by argument. */
const incoming = new Map<number, Map<number, unknown[][]>>();

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "rows") return collect(data);
  const ranges = incoming.get(data.call);
  incoming.delete(data.call);
  void answer({ ...data, args: data.args.map((value, at) => ranges?.get(at) ?? value) });
};

async function answer({ call, name, dateSystem, args }: Extract<ToWorker, { kind: "call" }>): Promise<void> {
  // without a solver the function itself says what to do
  if (FUNCTIONS.get(name)?.needsSolver && !hasSolver()) await loadSolver().then(setSolver, () => undefined);
  setDateSystem(dateSystem);
  const reply: FromWorker = { call, answer: answerOf(name, args) };
  self.postMessage(reply);
}

function collect({ call, argument, rows }: Extract<ToWorker, { kind: "rows" }>): void {
  const ranges = incoming.get(call) ?? new Map<number, unknown[][]>();
  incoming.set(call, ranges);
  ranges.set(argument, [...(ranges.get(argument) ?? []), ...rows]);
}
