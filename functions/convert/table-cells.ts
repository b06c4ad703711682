import { dayFromIso } from "../../src/age/day";
import type { Table, TableColumn, TableValue } from "../../src/tables/table";
import { type AnswerCell, DayCell } from "../answer";

export interface Spilled {
  readonly key: string;
  readonly header: string;
}

/** A header row and the rows of a table, in the columns asked for; dates go out as the host's dates. */
export function tableCells(table: Table, columns: readonly Spilled[] = everyColumn(table)): AnswerCell[][] {
  const taken = columns.map(({ key }) => table.columns.findIndex((column) => column.key === key));
  const rows = table.rows.map((row) =>
    taken.map((at) => cellOf(row[at] as TableValue, (table.columns[at] as TableColumn).unit)),
  );
  return [columns.map(({ header }) => header), ...rows];
}

function everyColumn(table: Table): Spilled[] {
  return table.columns.map(({ key, label }) => ({ key, header: label }));
}

function cellOf(value: TableValue, unit: TableColumn["unit"]): AnswerCell {
  return unit === "date" && typeof value === "string" ? new DayCell(dayFromIso(value) as number) : value;
}
