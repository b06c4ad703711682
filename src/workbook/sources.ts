import { safeSheetNames } from "./sheet-names";
import type { SheetIn, WorkbookIn } from "./workbook";

/** One of several files that are read as one program. */
export interface SourceIn {
  /** The name by which findings and messages call it. */
  readonly file: string;
  readonly workbook: WorkbookIn;
}

/** Several files as one workbook, in the order given: every sheet says which file it is in. One file stays as it is. */
export function oneWorkbook(sources: readonly SourceIn[]): WorkbookIn {
  const [first, ...others] = sources;
  if (!first) throw new RangeError("oneWorkbook: no source was given");
  if (others.length === 0) return first.workbook;
  const { dateSystem } = first.workbook;
  const sheets = sources.flatMap(({ file, workbook }) =>
    workbook.sheets.map((sheet) =>
      workbook.dateSystem === dateSystem
        ? { ...sheet, file }
        : { ...sheet, file, dateSystem: sheet.dateSystem ?? workbook.dateSystem },
    ),
  );
  return { dateSystem, sheets };
}

/**
 * The same workbook for a host that shows its sheets beside each other, and finds them by name alone: a name that several files
 * have is followed by that of its file, `Children (NORTH)`.
 */
export function withOwnNames(workbook: WorkbookIn): WorkbookIn {
  const times = new Map<string, number>();
  for (const { name } of workbook.sheets) times.set(name.toLowerCase(), (times.get(name.toLowerCase()) ?? 0) + 1);
  const names = workbook.sheets.map(({ name, file }) =>
    file === undefined || times.get(name.toLowerCase()) === 1 ? name : `${name} (${file.replace(/\.[a-z]+$/i, "")})`,
  );
  const safe = workbook.sheets.some(({ file }) => file !== undefined) ? safeSheetNames(names) : names;
  return { ...workbook, sheets: workbook.sheets.map((sheet, at) => ({ ...sheet, name: safe[at] as string })) };
}

/** Where a sheet is: its name and, among several files, its file. */
export interface SheetPlace {
  readonly sheet: string;
  readonly file?: string;
}

export function sheetAt(workbook: WorkbookIn, { sheet, file }: SheetPlace): SheetIn | undefined {
  return workbook.sheets.find((each) => each.name === sheet && each.file === file);
}

/** `Children!A5`, or among several files `[NORTH.xlsx]Children!A5`, as a spreadsheet writes it. */
export function placeInWords({ sheet, file }: SheetPlace, cell = ""): string {
  return `${file === undefined ? "" : `[${file}]`}${sheet}${cell === "" ? "" : `!${cell}`}`;
}

/** The file as a key to be spread into what says where something is; nothing where there is only one. */
export function fileOf({ file }: { readonly file?: string | undefined }): { readonly file?: string } {
  return file === undefined ? {} : { file };
}
