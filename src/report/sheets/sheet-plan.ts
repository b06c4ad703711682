import type { Table } from "../../tables/table";
import { capital } from "./words";

const NAMES: Readonly<Record<string, string>> = {
  "met-by-band": "Met by band",
  "met-by-band-left": "Met by band, left",
  "reached-by-age": "Reached by age",
  "since-enrolment": "Since enrolment",
  "age-when-met": "Age when met",
  "skill-status": "Skill status",
  agreement: "Agreement",
};

/** The name of a table's sheet; one about single children says that it is internal. */
export function sheetNameOf(table: Pick<Table, "id" | "internal">): string {
  const known = Object.hasOwn(NAMES, table.id) ? NAMES[table.id] : undefined;
  const name = known ?? capital(table.id.replaceAll("-", " "));
  return table.internal ? `${name} (internal)` : name;
}

/** The name of the Excel table on that sheet: `MetByBand`. */
export function excelTableName(table: Table): string {
  const words = table.id.split(/[^A-Za-z0-9]+/).filter((word) => word !== "");
  return `Table_${words.map(capital).join("")}`;
}
