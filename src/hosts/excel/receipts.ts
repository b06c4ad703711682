import { HostFailure, type JobOptions, type Receipt } from "../../workbook/host";
import type { Mark, MarkedSheet } from "./mark";
import type { Patience } from "./run";
import { removeSheets } from "./write/remove-sheets";
import { readStanding } from "./write/standing";

/**
 * One receipt a run, the oldest first, of the sheets that are still there, under the names that they have now. A run that
 * stopped and could not take its sheets away has one too.
 */
export function receiptsOf(sheets: readonly MarkedSheet[]): Receipt[] {
  const runs = new Map<string, { first: Mark; sheets: string[]; unsure: string[]; isWhole: boolean }>();
  for (const { name, mark, unsure } of sheets) {
    const its = mark ?? unsure;
    if (its?.kind !== "report") continue;
    const run = runs.get(runOf(its)) ?? { first: its, sheets: [], unsure: [], isWhole: true };
    (mark ? run.sheets : run.unsure).push(name);
    runs.set(runOf(its), { ...run, isWhole: run.isWhole && its.whole });
  }
  return [...runs.values()]
    .sort((a, b) => a.first.run - b.first.run)
    .map(({ first: { label }, sheets: named, unsure, isWhole }) => ({
      sheets: named,
      label,
      ...(!isWhole && { unfinished: true as const }),
      ...(unsure.length > 0 && { unsure }),
    }));
}

/** Two people who work in one workbook may begin a run of the same number. */
function runOf({ run, key, label }: Mark): string {
  return JSON.stringify([run, label, key.split("-")[0]]);
}

/** Deletes the sheets of a receipt that bear the mark; a sheet of the same name that the user made stays. */
export async function removeAdded(receipt: Receipt, patience: Patience, options?: JobOptions): Promise<void> {
  const { sheets } = await readStanding(patience, options);
  const named = new Set(receipt.sheets);
  const copied = new Set(sheets.map(({ copyOf }) => copyOf));
  const ours = sheets.flatMap(({ id, name, mark }) =>
    mark?.kind === "report" && named.has(name) ? [{ id, key: mark.key, hasCopy: copied.has(mark.key) }] : [],
  );
  if (ours.length === 0) {
    throw new HostFailure("changed meanwhile", "These sheets are no longer there: nothing was left to remove.");
  }
  await removeSheets(ours, patience, options);
}
