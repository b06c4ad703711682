import { plural } from "../../words/numbers";
import type { Provenance } from "../report";
import type { MadeFrom } from "./provenance-line";

/** Why a report that was made again is not the same, in sentences; empty where nothing that is known differs. */
export function differencesInWords(earlier: MadeFrom, now: Provenance): string[] {
  const records = recordsInWords(earlier, now);
  const version =
    earlier.version === now.version
      ? []
      : [`The report was made with version ${earlier.version}, and this is version ${now.version}.`];
  const corrections =
    earlier.corrections === now.corrections ? [] : [correctionsInWords(earlier.corrections, now.corrections)];
  return [...records, ...corrections, ...version];
}

function recordsInWords(earlier: MadeFrom, now: Provenance): string[] {
  if (earlier.fingerprint === now.fingerprint) return [];
  const names = [...new Set([...earlier.records, ...now.records].map(({ table }) => table))];
  const tables = names.flatMap((table) => {
    const [then, today] = [earlier, now].map(({ records }) => records.find((each) => each.table === table));
    if (then?.fingerprint === today?.fingerprint) return [];
    if (!then) return [`${table} is new, with ${plural(today?.rows ?? 0, "row", "rows")}.`];
    if (!today) return [`${table} is no longer there; it had ${plural(then.rows, "row", "rows")}.`];
    return [`${table}: ${changeOfRows(then.rows, today.rows)}.`];
  });
  return ["The records are not the same.", ...filesInWords(earlier, now), ...tables];
}

/** Which of several files differ. */
function filesInWords(earlier: MadeFrom, now: Provenance): string[] {
  const names = [...new Set([...(earlier.files ?? []), ...(now.files ?? [])].map(({ file }) => file))];
  return names.flatMap((file) => {
    const [then, today] = [earlier, now].map(({ files }) => files?.find((each) => each.file === file));
    if (then?.fingerprint === today?.fingerprint) return [];
    if (!then) return [`${file} was not among the files of the report.`];
    return [today ? `${file}: ${changeOfRows(then.rows, today.rows)}.` : `${file} was not given now.`];
  });
}

function changeOfRows(then: number, today: number): string {
  if (then === today) return `${plural(today, "row", "rows")} as before, and cells that changed`;
  const [more, fewer] = [today - then, then - today];
  const moved = more > 0 ? `${plural(more, "row", "rows")} more` : `${plural(fewer, "row", "rows")} fewer`;
  return `${plural(today, "row", "rows")}, ${moved} than the ${then} before`;
}

function correctionsInWords(then: string | null, today: string | null): string {
  if (today === null)
    return "The report was made with corrections, and none were given now: name their file with --understanding.";
  if (then === null) return "The report was made without corrections, and some were given now.";
  return "The corrections are not the same.";
}

/** A cell of a table with both its values. */
export interface CellDifference {
  /** `met-by-band / walk-alone, 12 to <18 months / met`. */
  readonly place: string;
  readonly earlier: string;
  readonly now: string;
}

/** The first cells in which two reports differ, and how many there are in all. */
export interface CellDifferences {
  readonly count: number;
  readonly first: readonly CellDifference[];
}

interface JsonTable {
  readonly id: string;
  readonly internal?: boolean;
  readonly columns: readonly { readonly key: string; readonly unit: string }[];
  readonly rows: readonly (readonly unknown[])[];
}

const SHOWN_AT_MOST = 10;

/**
 * Compares the tables of two reports cell by cell, rows found by their names. Tables of single children are counted, and
 * none of their cells is shown.
 */
export function cellDifferences(earlier: readonly JsonTable[], now: readonly JsonTable[]): CellDifferences {
  const all = now.flatMap((table) => {
    const before = earlier.find(({ id }) => id === table.id);
    return before ? tableDifferences(before, table) : [];
  });
  return { count: all.length, first: all.flatMap((each) => each ?? []).slice(0, SHOWN_AT_MOST) };
}

function tableDifferences(before: JsonTable, now: JsonTable): (CellDifference | null)[] {
  const earlier = rowsByName(before);
  const today = rowsByName(now);
  const names = [...new Set([...earlier.keys(), ...today.keys()])];
  return names.flatMap((name) =>
    now.columns.flatMap(({ key }) => {
      const [then, value] = [valueAt(before, earlier.get(name), key), valueAt(now, today.get(name), key)];
      if (then === value) return [];
      if (now.internal === true || INTERNAL.has(now.id)) return [null];
      return [{ place: `${now.id} / ${name} / ${key}`, earlier: then, now: value }];
    }),
  );
}

const INTERNAL: ReadonlySet<string> = new Set(["skill-status", "caseload", "recheck-plan"]);

function rowsByName(table: JsonTable): Map<string, readonly unknown[]> {
  const seen = new Map<string, number>();
  return new Map(
    table.rows.map((row) => {
      const name = table.columns
        .flatMap(({ key, unit }, at) =>
          (unit === "text" && !NO_NAMES.has(key)) || key === "age" || key === "statement"
            ? [String(row[at] ?? "")]
            : [],
        )
        .join(", ");
      const times = (seen.get(name) ?? 0) + 1;
      seen.set(name, times);
      return [times === 1 ? name : `${name} (${times})`, row];
    }),
  );
}

/** Texts that say how a figure came about, and do not name its row. */
const NO_NAMES: ReadonlySet<string> = new Set(["method", "reason", "provisional"]);

function valueAt({ columns }: JsonTable, row: readonly unknown[] | undefined, key: string): string {
  if (!row) return "no such row";
  const at = columns.findIndex((column) => column.key === key);
  return at < 0 ? "no such column" : JSON.stringify(row[at] ?? null);
}
