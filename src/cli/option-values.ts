import { InvalidArgumentError } from "commander";

/** A comma-separated list, without blanks. */
export function listOf(text: string): string[] {
  return text
    .split(",")
    .map((each) => each.trim())
    .filter((each) => each !== "");
}

/** What stands wherever a command reads a program's records. */
export const BOOKS =
  "the program's workbooks (.xlsx), extracts (.csv, .parquet, .sqlite, postgres://…) or folders of them, read as one in the order given; only read";

/** A workbook under another ending would not open. */
export function workbookName(file: string): string {
  if (!/\.xlsx$/i.test(file)) throw new InvalidArgumentError("It is a workbook: give a name that ends in .xlsx.");
  return file;
}
