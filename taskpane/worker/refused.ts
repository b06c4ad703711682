import type { Report } from "../../src/report/report";
import type { ReportRun } from "../../src/report/run";

/** The worker cannot make what was asked for; the message is a sentence for a person, and carries no text of a cell. */
export class Refused extends Error {
  override readonly name = "Refused";
}

export function reportOrRefuse(run: ReportRun): Report {
  if ("reason" in run) throw new Refused(run.reason);
  return run.report;
}
