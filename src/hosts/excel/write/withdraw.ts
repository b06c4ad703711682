/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../../workbook/host";
import { type MarkedSheet, markedSheets } from "../mark";
import { inExcel, type Patience, pause, Unanswered } from "../run";
import { removeSheets, type SheetToRemove } from "./remove-sheets";

/** A sheet that a job asked for. Without an id Excel has not answered for it yet. */
export interface AddedSheet {
  readonly name: string;
  readonly key: string;
  id?: string;
}

/** What is left of two seconds after a cancel, once the request that was out had its time. */
const CLEANING_MS = 1_000;

/**
 * Takes away what a job had added when it stopped, and throws: the reason that it stopped for, or what the person has to
 * know of sheets that are still there or may still appear.
 */
export async function withdraw(
  added: readonly AddedSheet[],
  cause: unknown,
  patience: Patience,
  options?: JobOptions,
): Promise<never> {
  if (added.length === 0) throw cause;
  const cleaning = takeAway(added, patience).then(
    () => "done" as const,
    () => "failed" as const,
  );
  const end = await Promise.race([cleaning, tooLate(options?.signal)]);
  const pending = cause instanceof Unanswered ? added.filter(({ id }) => id === undefined) : [];
  if (end === "done" && pending.length === 0) throw cause;
  if (end === "failed") throw new HostFailure("left behind", leftBehind(added));
  const later = Promise.all([cleaning, cause instanceof Unanswered ? cause.answered : null]);
  throw new HostFailure("unanswered", mayAppear(end === "done" ? pending : added), cleanLater(later, added, patience));
}

async function cleanLater(
  answered: Promise<unknown>,
  added: readonly AddedSheet[],
  patience: Patience,
): Promise<string> {
  await answered;
  try {
    await takeAway(added, patience);
    return "Excel has answered, and what the canceled job had added was removed.";
  } catch {
    return leftBehind(added);
  }
}

/** Only a cancel makes haste: a job that failed has the person's patience. */
function tooLate(signal: AbortSignal | undefined): Promise<"late"> {
  return new Promise((resolve) => {
    const wait = () => void pause(CLEANING_MS, undefined).then(() => resolve("late"));
    if (signal?.aborted) wait();
    else signal?.addEventListener("abort", wait, { once: true });
  });
}

/** Finds the sheets by their marks, since the answer that named their ids may be lost. */
async function takeAway(added: readonly AddedSheet[], patience: Patience): Promise<void> {
  const sheets = await inExcel(async (context) => {
    const marked = await markedSheets(context);
    const bare = unmarked(added, marked);
    const used = bare.map(({ id }) =>
      context.workbook.worksheets.getItem(id).getUsedRangeOrNullObject(true).load("rowIndex"),
    );
    if (bare.length > 0) await context.sync();
    return [...ofTheJob(added, marked), ...bare.filter((_, index) => used[index]?.isNullObject)];
  }, patience);
  await removeSheets(sheets, patience);
}

function ofTheJob(added: readonly AddedSheet[], marked: readonly MarkedSheet[]): SheetToRemove[] {
  return added.flatMap(({ key }) => {
    const bearers = marked.filter(({ mark, unsure }) => (mark ?? unsure)?.key === key);
    const known = bearers.find(({ mark }) => mark) ?? (bearers.length === 1 ? bearers[0] : undefined);
    return known ? [{ id: known.id, key }] : [];
  });
}

/** Asked for and there, and the request failed before the mark: only where it is empty is it surely the job's. */
function unmarked(added: readonly AddedSheet[], marked: readonly MarkedSheet[]): SheetToRemove[] {
  return added.flatMap(({ name, key, id }) => {
    const bare = marked.find((each) => each.name === name && !each.mark && !each.unsure);
    return bare && id === undefined ? [{ id: bare.id, key }] : [];
  });
}

function leftBehind(added: readonly AddedSheet[]): string {
  return `The job stopped, and Excel did not let its unfinished sheets be removed: ${namesOf(added)}. Remove them under Added to this workbook, or delete them by hand.`;
}

function mayAppear(added: readonly AddedSheet[]): string {
  return `Canceled, though Excel has not answered yet. These sheets may still be there or appear: ${namesOf(added)}. They are removed when Excel answers.`;
}

function namesOf(added: readonly AddedSheet[]): string {
  return added.map(({ name }) => name).join(", ");
}
