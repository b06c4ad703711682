import { CommandFailure } from "./failure";
import { parseWords } from "./program";
import type { Request } from "./request";
import { runAgainCommand } from "./run-again";
import { runCallCommand } from "./run-call";
import { runChangedCommand } from "./run-changed";
import { runCheckCommand } from "./run-check";
import { runFirmCommand } from "./run-firm";
import { runPageCommand } from "./run-page";
import { runReportCommand } from "./run-report";
import { runSampleCommand } from "./run-sample";
import { runTemplateCommand } from "./run-template";
import { runUnderstandCommand } from "./run-understand";
import { complain, print } from "./say";

const UNEXPECTED = 70;

/** Runs the words of one command line and gives the exit code. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    const request = parseWords(words, print);
    return request === null ? 0 : await run(request);
  } catch (error) {
    if (error instanceof CommandFailure) {
      complain(error.message);
      return error.exitCode;
    }
    complain(`Something went wrong that should not: ${whereOf(error)}. Nothing more was written.`);
    return UNEXPECTED;
  }
}

function run(request: Request): number | Promise<number> {
  switch (request.kind) {
    case "report":
      return runReportCommand(request);
    case "check":
      return runCheckCommand(request);
    case "release":
      // what draws pictures is large, and asked for by this command alone
      return import(/* webpackMode: "eager" */ "./run-release").then((each) => each.runReleaseCommand(request));
    case "page":
      return runPageCommand(request);
    case "call":
      return runCallCommand(request);
    case "again":
      return runAgainCommand(request);
    case "changed":
      return runChangedCommand(request);
    case "firm":
      return runFirmCommand(request);
    case "understand":
      return runUnderstandCommand(request);
    case "template":
      return runTemplateCommand(request);
    case "sample":
      return runSampleCommand(request);
  }
}

/** Kind and place only: the message of an unforeseen error could carry a cell. */
function whereOf(error: unknown): string {
  if (!(error instanceof Error)) return "unknown failure";
  const frame = error.stack?.split("\n").find((line) => /^\s+at /.test(line));
  return `${error.name} ${frame?.trim() ?? ""}`.trim();
}
