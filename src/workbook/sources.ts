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
