import type { WorkbookIn } from "../../workbook/workbook";
import { addRows, literal, pathLiteral, withDuckDb } from "./duckdb";
import { type CsvScan, firstLineNotUtf8, scanCsv } from "./scan-csv";
import { TextColumns } from "./text-columns";
import { torn, UnreadableExtract } from "./unreadable-extract";

/**
 * A CSV file as a workbook of one sheet, every cell a text: nothing is guessed of numbers and dates, which the records prove column
 * by column. A row has the number that it has in the file.
 *
 * @throws {UnreadableExtract} when the file is torn, or other rows came than are in it
 */
export async function readCsv(path: string, name: string): Promise<WorkbookIn> {
  const scan = scanCsv(path);
  const columns = new TextColumns(scan.width);
  const rows = await withDuckDb((connection) => addRows(connection, queryOf(path, scan), columns)).catch(
    (error: unknown) => refuse(error, path),
  );
  if (rows !== scan.records)
    throw new UnreadableExtract(
      `${rows} of its ${scan.records} lines were read. Export it again. Nothing of it was used.`,
    );
  return { dateSystem: 1900, sheets: [withBlanks(columns, scan).sheet(name)] };
}

const LONGEST_LINE_BYTES = 16 << 20;

function queryOf(path: string, { delimiter, width }: CsvScan): string {
  const columns = Array.from({ length: width }, (_, at) => `'c${at}': 'VARCHAR'`).join(", ");
  const options = [
    "auto_detect = false",
    "header = false",
    `delim = ${literal(delimiter)}`,
    `quote = '"'`,
    `escape = '"'`,
    `columns = {${columns}}`,
    "nullstr = ''",
    "strict_mode = true",
    `max_line_size = ${LONGEST_LINE_BYTES}`,
  ];
  return `SELECT * FROM read_csv(${pathLiteral(path)}, ${options.join(", ")})`;
}

/** The message of the reader may quote the line itself, and is never passed on. */
function refuse(error: unknown, path: string): never {
  if (error instanceof UnreadableExtract) throw error;
  const line = firstLineNotUtf8(path);
  if (line !== null) torn(line, "is not UTF-8 (save the file as “CSV UTF-8”)");
  throw new UnreadableExtract("the reader of CSV files could not read it. Export it again. Nothing of it was used.");
}

/** The reader leaves blank lines out; each row has the number that it has in the file all the same. */
function withBlanks(columns: TextColumns, { blanks }: CsvScan): TextColumns {
  if (blanks.length > 0) columns.openRows(blanks);
  return columns;
}
