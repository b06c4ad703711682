import { readFileSync } from "node:fs";
import { setSolver } from "../../functions/solver";
import { loadSolver } from "../hosts/file/load-solver";
import { callFunction, needsSolver } from "./call";
import { badRequest, EXIT } from "./failure";
import type { RequestOf } from "./request";
import { print } from "./say";

export async function runCallCommand({ name }: RequestOf<"call">): Promise<number> {
  if (needsSolver(name)) setSolver(await loadSolver());
  const answer = callFunction(name, argumentsFrom(readFileSync(0, "utf8")));
  if ("error" in answer && answer.error === "#NAME?") throw badRequest(answer.message);
  print(JSON.stringify("error" in answer ? answer : answer.result));
  return EXIT.done;
}

function argumentsFrom(text: string): readonly unknown[] {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    parsed = null;
  }
  if (Array.isArray(parsed)) return parsed;
  throw badRequest('Give the arguments as a JSON array on standard input, such as ["2026-01-31", null, "2026-09-30"].');
}
