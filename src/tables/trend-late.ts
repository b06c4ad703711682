import type { Day } from "../age/day";
import { NO_DAY } from "../records/records";
import { daysUntilMissing, entryLag, shareStillMissing } from "../statistics/entry-lag";
import { dayInWords } from "../words/dates";
import { shareOf } from "../words/numbers";
import type { TableContext } from "./context";
import type { Quarter } from "./trend-quarters";

/** Above this share of observations still to be entered a quarter is provisional, and at or under it a cut-off is safe. */
const SAFE_SHARE = 0.02;

/** What entry lag says of the last quarter. */
export interface LateEntries {
  /** Null where it cannot be told. */
  readonly provisional: boolean | null;
  readonly note: string;
}

const UNKNOWN = "Whether observations of the last quarter are still to be entered is not known";

/** Lags are learned from the checks of all the quarters; the records close on the last day of entry of the workbook. */
export function lateEntries({ records, settings, asOf }: TableContext, quarters: readonly Quarter[]): LateEntries {
  const { day, entered, lastEntered } = records.observations;
  const from = quarters[0]?.first ?? asOf;
  const rows = [...day.keys()].filter((row) => entered[row] !== NO_DAY && (day[row] as number) >= from);
  if (rows.length === 0) return { provisional: null, note: `${UNKNOWN}: the day of entry is not recorded.` };
  const closed = Math.min(settings.enteredBy ?? lastEntered, lastEntered);
  const seen = rows.filter((row) => (day[row] as number) <= closed);
  const lag = entryLag(
    Int32Array.from(seen, (row) => Math.max(0, (entered[row] as number) - (day[row] as number))),
    Int32Array.from(seen, (row) => closed - (day[row] as number)),
  );
  const last = quarters.at(-1) as Quarter;
  // sorted, so that sums are made in the same order whatever the order of the rows
  const elapsed = seen
    .filter((row) => (day[row] as number) >= last.first)
    .map((row) => closed - (day[row] as number))
    .sort((a, b) => a - b);
  const missing = shareStillMissing(lag, elapsed);
  if (missing === null) return { provisional: null, note: `${UNKNOWN}: it has no observation with a day of entry.` };
  const later = daysUntilMissing(lag, elapsed, SAFE_SHARE, last.day - closed) as number;
  return { provisional: missing > SAFE_SHARE, note: lateNote(last, missing, elapsed.length, closed, closed + later) };
}

function lateNote({ label, day }: Quarter, missing: number, entered: number, closed: Day, safe: Day): string {
  const toCome = Math.round((missing * entered) / (1 - missing));
  const word = missing > SAFE_SHARE ? "provisional" : "not provisional";
  return [
    `${label} is ${word}: about ${shareOf(toCome, toCome + entered)} of its observations up to ${dayInWords(Math.min(day, closed))} were still to be entered on ${dayInWords(closed)}, the last day of entry that counts (from the days between an observation and its entry; reverse-time hazard).`,
    ...(closed < day ? [`Nothing is known of what was seen from the day after it to ${dayInWords(day)}.`] : []),
    `The earliest cut-off by day of entry with at most ${100 * SAFE_SHARE}% missing is ${dayInWords(safe)}. Lags longer than any seen cannot be foreseen.`,
  ].join(" ");
}
