import type { SheetKind } from "../corrections/settled";
import { specOf } from "../tables";
import { GRID } from "../tables/observations";
import type { TableName, TableSpec } from "../tables/spec";

const TABLE_OF: Readonly<Record<Exclude<SheetKind, "not used" | "grid">, TableName>> = {
  children: "Children",
  observations: "Observations",
  skills: "Skills",
  referrals: "Referrals",
  signs: "Signs",
  ratings: "Ratings",
};

/** The columns that a kind of sheet has; null for one that is not used. */
export function specOfKind(is: SheetKind): TableSpec | null {
  if (is === "not used") return null;
  return is === "grid" ? GRID : specOf(TABLE_OF[is]);
}

export function kindOfTable(table: TableName): SheetKind {
  return (Object.entries(TABLE_OF) as [SheetKind, TableName][]).find(([, name]) => name === table)?.[0] ?? "not used";
}
