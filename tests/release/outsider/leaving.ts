import { strFromU8 } from "fflate";
import { releaseFiles } from "../../../src/hosts/file/release-files";
import { readRecords } from "../../../src/records/read-records";
import { appendEntry, type Ledger } from "../../../src/release/ledger";
import type { Solver } from "../../../src/release/linear-model";
import { prepareRelease } from "../../../src/report/prepare-release";
import { contextOf, rulesOf } from "../../../src/report/release/release-rules";
import { parseSettings, type Settings } from "../../../src/settings/settings";
import type { ReleasableId } from "../../../src/tables/table";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { reportOf } from "../../support/report-of";

/** What is asked for. */
export interface Ask {
  readonly asOf: string;
  readonly from: string;
  readonly by: readonly string[];
  readonly edges: readonly number[];
  readonly tables: readonly ReleasableId[];
  readonly minimumCell: number;
  readonly method?: "hide" | "round" | "ranges";
}

/** A printed cell: a number, a range as text, `*`, a label, or nothing. */
export type Printed = Readonly<Record<string, string>>;

/** A table as it left, with the words that stand over it. */
export interface Sheet extends Pick<Ask, "asOf" | "from" | "by" | "edges"> {
  readonly id: ReleasableId;
  readonly rows: readonly Printed[];
}

export interface Left {
  readonly sheets: readonly Sheet[];
  readonly ledger: Ledger;
  readonly notCovered: readonly string[];
  /** What counts were rounded to; 1: they were not. */
  readonly base: number;
}

/** Makes a release and reads its files back; null where it was refused. */
export async function leaving(
  book: WorkbookIn,
  ask: Ask,
  how: {
    readonly ledger: Ledger;
    readonly solver: Solver;
    readonly mostAsks?: number;
  },
): Promise<Left | null> {
  const settings = settingsOf(ask);
  const records = readRecords(book, settings, []);
  let asked = 0;
  const isTimeUp = () => (asked += 1) > (how.mostAsks ?? Infinity);
  const { ledger, solver } = how;
  const found = prepareRelease(records, { settings, tables: ask.tables, ledger, solver, isTimeUp });
  if ("places" in found) return null;
  const files = await releaseFiles(found, contextOf(found, settings, records), {
    formats: ["csv"],
    rules: rulesOf(found, settings, records),
    draw: () => Promise.reject(new Error("no picture was asked for")),
  });
  const textOf = (id: string) => strFromU8(files.find(({ ending }) => ending === `-${id}.csv`)!.bytes);
  const sheets = ask.tables.map((id) => ({ ...ask, id, rows: rowsOf(textOf(id)) }));
  return {
    sheets,
    ledger: appendEntry(ledger, found.entry),
    notCovered: found.notCovered,
    base: found.rule.base ?? 1,
  };
}

/** The same tables with nothing held back. */
export function truthOf(book: WorkbookIn, ask: Ask): Sheet[] {
  const { tables } = reportOf(book, settingsOf(ask), ask.tables);
  return tables.map(({ id, columns, rows }) => ({
    ...ask,
    id: id as ReleasableId,
    rows: rows.map((row) => Object.fromEntries(columns.map(({ key }, at) => [key, String(row[at] ?? "")]))),
  }));
}

function settingsOf({ method = "hide", tables: _, ...entries }: Ask): Settings {
  const parsed = parseSettings({ ...entries, releaseMethod: method }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}

/** Rows of a table in CSV, under the keys of its columns. */
export function rowsOf(csv: string): Printed[] {
  const [header = [], ...rows] = csvRows(csv.replace(/^\uFEFF/, ""));
  return rows.map((row) => Object.fromEntries(header.map((key, at) => [key, row[at] ?? ""])));
}

/** Rows of CSV as in RFC 4180. */
function csvRows(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    if (end === "" && quoted === undefined && plain === "") continue;
    rows.at(-1)!.push(quoted?.replaceAll('""', '"') ?? plain ?? "");
    if (end === "\r\n") rows.push([]);
  }
  return rows.filter((row) => row.length > 0);
}
