import type { Skill } from "../../records/records";
import type { ReleasedTable, ReleasedValue } from "../../release/release-table";
import { isRange, textOf } from "../../release/words/read-released";
import type { TableValue } from "../../tables/table";
import { ALL_SKILLS } from "../sheets/read-table";

/** The value as a cell holds it: a range in words. */
export function printedValue(value: ReleasedValue): TableValue {
  return isRange(value) ? textOf(value) : value;
}

/** The rows as they are printed: skills by their labels. */
export function printedRows(table: ReleasedTable, skills: readonly Skill[]): TableValue[][] {
  const skillAt = table.columns.findIndex(({ key }) => key === "skill");
  const labels = new Map(skills.map(({ id, label }) => [id, label]));
  return table.rows.map((row) =>
    row.map((value, at) => (at === skillAt ? labelOf(String(value ?? ""), labels) : printedValue(value))),
  );
}

function labelOf(id: string, labels: ReadonlyMap<string, string>): string {
  return id === ALL_SKILLS ? "All skills of the area (skill checks)" : labels.get(id) || id;
}
