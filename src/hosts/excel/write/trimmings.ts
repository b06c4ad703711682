/// <reference types="office-js" />
import { type FailureKind, HostFailure, type JobOptions } from "../../../workbook/host";
import type { Patience } from "../run";
import { doSteps, type Step } from "./steps";

/** A step that a sheet can do without; `what` names it for the person. */
export interface Trimming {
  readonly what: string;
  readonly step: Step;
}

/** Kinds of failure after which the rest of the sheet can still be made. */
const BEARABLE: ReadonlySet<FailureKind> = new Set<FailureKind>(["unknown", "not supported", "locked"]);

/** Does them all in one request, and each by itself where Excel refuses that; gives what was not set. */
export async function doTrimmings(
  sheetId: string,
  trimmings: readonly Trimming[],
  patience: Patience,
  options?: JobOptions,
): Promise<string[]> {
  const steps = trimmings.map(({ step }) => step);
  if (await isDone(sheetId, steps, patience, options)) return [];
  const unset: string[] = [];
  for (const { what, step } of trimmings) {
    if (!(await isDone(sheetId, [step], patience, options))) unset.push(what);
  }
  return unset;
}

async function isDone(
  sheetId: string,
  steps: readonly Step[],
  patience: Patience,
  options?: JobOptions,
): Promise<boolean> {
  try {
    await doSteps(sheetId, steps, patience, options);
    return true;
  } catch (error) {
    if (error instanceof HostFailure && BEARABLE.has(error.kind)) return false;
    throw error;
  }
}

/** The note of a receipt: nothing where everything was set. */
export function unsetInWords(unset: readonly string[]): { note?: string } {
  if (unset.length === 0) return {};
  const what = [...new Set(unset)].join(", ");
  return { note: `Excel did not set everything for printing: ${what}. Check Page Layout before you print.` };
}
