import { HostFailure, type JobOptions, type Receipt } from "../../workbook/host";
import type { MarkedSheet } from "./mark";
import type { Patience } from "./run";
import { removeSheets } from "./write/remove-sheets";
import { readStanding } from "./write/standing";

/** One receipt a run, the oldest first, of the sheets that are still there, under the names that they have now. */
export function receiptsOf(sheets: readonly MarkedSheet[]): Receipt[] {
  const runs = new Map<number, { label: string; sheets: string[] }>();
  for (const { name, mark } of sheets) {
    if (mark?.kind !== "report") continue;
    const run = runs.get(mark.run) ?? { label: mark.label, sheets: [] };
    run.sheets.push(name);
    runs.set(mark.run, run);
  }
  return [...runs].sort(([a], [b]) => a - b).map(([, receipt]) => receipt);
}

/** Deletes the sheets of a receipt that bear the mark; a sheet of the same name that the user made stays. */
export async function removeAdded(receipt: Receipt, patience: Patience, options?: JobOptions): Promise<void> {
  const { sheets } = await readStanding(patience, options);
  const named = new Set(receipt.sheets);
  const ours = sheets.filter(({ name, mark }) => mark?.kind === "report" && named.has(name));
  if (ours.length === 0) {
    throw new HostFailure("changed meanwhile", "These sheets are no longer there: nothing was left to remove.");
  }
  await removeSheets(ours, patience, options);
}
