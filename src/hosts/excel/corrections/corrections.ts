/// <reference types="office-js" />
import { HostFailure, type JobOptions } from "../../../workbook/host";
import { type Mark, type MarkedSheet, markedSheets, newKey } from "../mark";
import { inExcel, type Patience, readInExcel } from "../run";
import { addSheet, finish, freshNames } from "../write/add-sheets";
import { readStanding } from "../write/standing";
import { TableNames } from "../write/tables";
import type { ValueBlock } from "../write/value-blocks";
import { type AddedSheet, withdraw } from "../write/withdraw";
import { writeSheet } from "../write/write-sheet";
import { changesFor } from "./changes";
import { layoutOf } from "./columns";
import {
  CORRECTIONS_SHEET,
  correctionsSheet,
  EARLIER_SHEET,
  listOf,
  type PlacedRow,
  type Row,
  rowsOn,
} from "./sheet-rows";
import { writeChanges } from "./write-changes";

/**
 * Corrections stand on a sheet of their own, where a person can read, revoke and carry them on. The sheet belongs to the
 * person too: its rows are found by their headings, and what they wrote there is never taken away.
 */
export class CorrectionsSheet {
  /** What was last read from the sheet or written to it. */
  private known: readonly Row[] = [];

  constructor(private readonly patience: Patience) {}

  async load(options?: JobOptions): Promise<unknown> {
    const found = await readInExcel(findCorrections, this.patience, options);
    this.known = (found?.rows ?? []).map(({ row }) => row);
    return found ? { decisions: this.known } : null;
  }

  async save(kept: unknown, options?: JobOptions): Promise<void> {
    const rows = listOf(kept);
    const isWritten = await inExcel((context) => this.write(context, rows, options), this.patience, options);
    if (!isWritten) await addCorrections(rows, this.patience, options);
    this.known = [...this.known, ...rows];
  }

  /** Read and written in one breath, so that a row moved meanwhile is not taken for another. False where there is no sheet. */
  private async write(context: Excel.RequestContext, rows: readonly Row[], options?: JobOptions): Promise<boolean> {
    const found = await findCorrections(context);
    if (!found) return false;
    options?.signal.throwIfAborted();
    const layout = layoutOf(found.values);
    if (!layout) throw new HostFailure("unreadable", headingsGone(found.name));
    const changes = changesFor(rows, found.rows, this.known, layout);
    writeChanges(context.workbook.worksheets.getItem(found.id), changes, layout, found.values);
    await context.sync();
    return true;
  }
}

interface Found {
  readonly id: string;
  readonly name: string;
  readonly values: readonly (readonly unknown[])[];
  readonly rows: readonly PlacedRow[];
}

/** The sheet that bears the mark, or one of its name and headings where another program has dropped the mark. */
async function findCorrections(context: Excel.RequestContext): Promise<Found | null> {
  const sheets = await markedSheets(context);
  const marked = markedOne(sheets);
  const candidates = marked ? [marked] : sheets.filter(({ name }) => [CORRECTIONS_SHEET, EARLIER_SHEET].includes(name));
  for (const { id, name } of candidates) {
    const used = context.workbook.worksheets.getItem(id).getUsedRangeOrNullObject(true);
    used.load("rowIndex,columnIndex,values");
    await context.sync();
    const values = used.isNullObject ? [] : fromA1(used);
    if (!marked && !layoutOf(values)) continue;
    if (!layoutOf(values) && values.length > 0) throw new HostFailure("unreadable", headingsGone(name));
    return { id, name, values, rows: rowsOn(values, name) };
  }
  return null;
}

/** One alone can be in force. */
function markedOne(sheets: readonly MarkedSheet[]): MarkedSheet | null {
  const proved = sheets.filter(({ mark }) => mark?.kind === "decisions");
  const bearers = proved.length > 0 ? proved : sheets.filter(({ unsure }) => unsure?.kind === "decisions");
  if (bearers.length < 2) return bearers[0] ?? null;
  const names = bearers.map(({ name }) => name).join(" and ");
  throw new HostFailure(
    "unreadable",
    `There are two sheets of corrections, ${names}, and only one can count. Copy what you need into one of them, delete the other, then read the workbook again.`,
  );
}

function headingsGone(name: string): string {
  return `The sheet ${name} has lost its headings. Undo that, or write them again (Correction, Revoked, Table, Child, Skill, Also written, Column, Order of dates, Heading, Means), then read the workbook again.`;
}

function fromA1({ rowIndex, columnIndex, values }: Excel.Range): unknown[][] {
  const lead = Array.from({ length: columnIndex }, () => "");
  const above = Array.from({ length: rowIndex }, () => []);
  return [...above, ...(values as unknown[][]).map((row) => [...lead, ...row])];
}

/** Corrections hold no dates. */
const DATE_SYSTEM = 1900;

async function addCorrections(rows: readonly Row[], patience: Patience, options?: JobOptions): Promise<void> {
  const standing = await readStanding(patience, options);
  const sheet = correctionsSheet(rows);
  const [name] = freshNames([sheet], standing) as [string];
  const mark: Mark = { kind: "decisions", run: 0, label: "", key: newKey(), name, id: "", whole: false };
  const added: AddedSheet[] = [];
  try {
    const add = (first: ValueBlock | null) => addSheet(mark, first, added, patience, options);
    await writeSheet(add, sheet, DATE_SYSTEM, new TableNames([]), patience, options);
    await finish([mark], added, patience, options);
  } catch (error) {
    await withdraw(added, error, patience, options);
  }
}
