import type { WorkbookIn } from "../../workbook/workbook";
import { addRows, identifier, pathLiteral, withDuckDb } from "./duckdb";
import { TextColumns } from "./text-columns";
import { UnreadableExtract } from "./unreadable-extract";

/**
 * A Parquet file as a workbook of one sheet, every cell a text: days as ISO dates, whole numbers without a decimal point. Its first
 * row counts as row 2, below the headings.
 *
 * @throws {UnreadableExtract} when it is no such file, or other rows came than it says that it has
 */
export async function readParquet(path: string, name: string): Promise<WorkbookIn> {
  return withDuckDb(async (connection): Promise<WorkbookIn> => {
    const file = `read_parquet(${pathLiteral(path)})`;
    const described = (await connection.runAndReadAll(`DESCRIBE SELECT * FROM ${file}`)).getRows() as [
      string,
      string,
    ][];
    const columns = new TextColumns(described.length);
    columns.addRow(described.map(([heading]) => heading));
    const cells = described.map(([heading, type]) => asText(identifier(heading), type));
    const rows = await addRows(connection, `SELECT ${cells.join(", ")} FROM ${file}`, columns);
    const said = await connection.runAndReadAll(
      `SELECT sum(num_rows)::INTEGER FROM parquet_file_metadata(${pathLiteral(path)})`,
    );
    const [[count] = []] = said.getRows();
    if (rows !== count) throw new UnreadableExtract(`${rows} of its ${String(count)} rows were read. Export it again.`);
    return { dateSystem: 1900, sheets: [columns.sheet(name)] };
  }).catch(refuse);
}

/** How a column is written as text. A moment at midnight is a day, and a whole number has no point. */
function asText(column: string, type: string): string {
  const text = `${column}::VARCHAR`;
  if (/^TIMESTAMP/.test(type))
    return `CASE WHEN ${column} = date_trunc('day', ${column}) THEN ${column}::DATE::VARCHAR ELSE ${text} END`;
  if (/^(DOUBLE|FLOAT|DECIMAL)/.test(type)) {
    const isWhole = `${column} = floor(${column}) AND abs(${column}) < 1e15`;
    return `CASE WHEN ${isWhole} THEN ${column}::BIGINT::VARCHAR ELSE ${text} END`;
  }
  return text;
}

/** The message of the reader may quote what is in the file, and is never passed on. */
function refuse(error: unknown): never {
  if (error instanceof UnreadableExtract) throw error;
  throw new UnreadableExtract("this is not a Parquet file, or it is damaged: export it again.");
}
