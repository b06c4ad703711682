import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { Table, TableId } from "../../tables/table";
import { capital } from "../../words/numbers";

/** The name of a table's sheet; one about single children says that it is internal. */
export function sheetNameOf(id: TableId): string {
  const { name, internal } = TABLE_CATALOGUE[id];
  return internal ? `${name} (internal)` : name;
}

/** The name of the Excel table on that sheet: `MetByBand`. */
export function excelTableName(table: Table): string {
  const words = table.id.split(/[^A-Za-z0-9]+/).filter((word) => word !== "");
  return `Table_${words.map(capital).join("")}`;
}
