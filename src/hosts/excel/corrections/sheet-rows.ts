import { parseDecisions } from "../../../records/corrections/decisions";
import { HostFailure } from "../../../workbook/host";
import type { CellOut, ColumnOut, SheetOut } from "../../../workbook/sheets";
import { COLUMNS, type Layout, layoutOf, neededBy, textOf } from "./columns";

export const CORRECTIONS_SHEET = "Windowline corrections";
/** How version 0.1.0 named it. */
export const EARLIER_SHEET = "Windowline decisions";

const ABOUT =
  "How the records are read, as a person settled it. To revoke a correction, write yes under Revoked, then read the workbook again. You may add rows, columns and notes: what you write here is kept. Keep this sheet to carry the corrections to the next quarter.";

/** One row: its kind, and what it says by the keys of the columns. Lists are kept as JSON. */
export type Row = Readonly<Record<string, string | number | boolean | object | null | undefined>>;

export interface PlacedRow {
  /** The row of the sheet, from 0. */
  readonly at: number;
  readonly row: Row;
}

/** A sheet for these rows, as it is first added. */
export function correctionsSheet(rows: readonly Row[]): SheetOut {
  const columns = COLUMNS.filter(({ key, further }) => !further || rows.some((row) => Object.hasOwn(row, key)));
  return {
    name: CORRECTIONS_SHEET,
    columns: columns.map(({ width }): ColumnOut => ({ width, style: "text" })),
    rows: [
      [{ value: ABOUT, style: "note" }],
      columns.map(({ heading }): CellOut => ({ value: heading, style: "heading" })),
      ...rows.map((row) => columns.map(({ key }) => cellOf(row, key))),
    ],
    rowHeights: new Map([[0, 33]]),
    merged: [{ top: 0, left: 0, bottom: 0, right: columns.length - 1 }],
    frozen: { rows: 2, columns: 0 },
  };
}

/** Words for what a cell cannot hold as it is. */
const BLANK = "(blank)";
const NONE = "(none)";

/** What goes into a cell; null where the row says nothing under that key. */
export function cellOf(row: Row, key: string): string | number | null {
  const value = Object.hasOwn(row, key) ? row[key] : undefined;
  if (value === undefined) return null;
  if (value === null) return NONE;
  if (value === "") return BLANK;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "object" ? JSON.stringify(value) : value;
}

/** @throws {RangeError} where there is no list of corrections, or one says something that the sheet has no column for */
export function listOf(kept: unknown): readonly Row[] {
  const list = Array.isArray(kept) ? kept : (kept as { decisions?: unknown } | null)?.decisions;
  if (!Array.isArray(list)) throw new RangeError("saveDecisions: there must be a list of decisions");
  const known = new Set(COLUMNS.map(({ key }) => key));
  for (const each of list as Row[]) {
    if (Object.keys(each).some((key) => !known.has(key))) throw new RangeError("saveDecisions: an unknown key");
  }
  return list as Row[];
}

/**
 * The rows of a sheet; blank ones are passed over. What a cell says otherwise is left for the message of the corrections.
 *
 * @throws {HostFailure} where a column is missing that some row needs
 */
export function rowsOn(values: readonly (readonly unknown[])[], sheetName: string): PlacedRow[] {
  const layout = layoutOf(values);
  if (!layout) return [];
  const rows = values.flatMap((cells, at) => {
    const row = at > layout.headingRow ? rowOf(cells, layout) : {};
    return Object.keys(row).length > 0 ? [{ at, row }] : [];
  });
  refuseMissing(rows, layout, sheetName);
  return rows.filter(({ row }) => !(row.revoked === true && isUnreadable(row)));
}

/** Revoking takes a row that cannot be read out of the way. */
function isUnreadable(row: Row): boolean {
  return "messages" in parseDecisions([row]);
}

function rowOf(cells: readonly unknown[], { at }: Layout): Row {
  return Object.fromEntries(
    [...at].flatMap(([key, column]) => {
      const text = textOf(cells[column]);
      return text === "" ? [] : [[key, valueOf(key, text)] as const];
    }),
  );
}

function valueOf(key: string, text: string): Row[string] {
  if (key === "kind") return text.toLowerCase().replaceAll(" ", "-");
  if (key === "revoked") return yesOrNo(text);
  if (text === BLANK) return "";
  if (text === NONE) return null;
  return COLUMNS.some((each) => each.key === key && each.isJson) ? jsonIn(text) : text;
}

function yesOrNo(text: string): boolean | string {
  if (/^(yes|true|x)$/i.test(text)) return true;
  return /^(no|false)$/i.test(text) ? false : text;
}

/** A text that is no JSON is left for the message of the corrections. */
function jsonIn(text: string): Row[string] {
  try {
    return JSON.parse(text) as Row[string];
  } catch {
    return text;
  }
}

function refuseMissing(rows: readonly PlacedRow[], { at }: Layout, sheetName: string): void {
  if (rows.length === 0) return;
  const needed = ["kind", ...rows.flatMap(({ row }) => neededBy(String(row.kind ?? "")))];
  const missing = COLUMNS.find(({ key }) => needed.includes(key) && !at.has(key));
  if (!missing) return;
  throw new HostFailure(
    "unreadable",
    `The sheet ${sheetName} has no column “${missing.heading}”. Give the column its heading back, then read the workbook again.`,
  );
}
