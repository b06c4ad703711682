import type { ReleasableId } from "../../tables/table";
import type { DraftTable } from "../release-table";
import type { CountSystem } from "../system";

/** Tables that leave out rows without children: a row says by being there that it holds 1 or more. */
const ONLY_WITH_CHILDREN: readonly ReleasableId[] = ["met-by-band", "met-by-band-left", "reached-by-age", "trend"];

/** The system with what its rows say by being there: an outsider knows which rows a table leaves out. */
export function withRowsThatAreThere(system: CountSystem, drafts: readonly DraftTable[]): CountSystem {
  const held = new Set(drafts.flatMap(heldCells));
  const cells = system.cells.map((cell, at) =>
    held.has(at) && (cell.count ?? 0) > 0 ? { ...cell, atLeast: 1 } : cell,
  );
  return { ...system, cells };
}

function heldCells({ id, columns, rows }: DraftTable): number[] {
  const at = (key: string) => columns.findIndex((column) => column.key === key);
  const [children, dimension] = [at("children"), at("dimension")];
  return rows.flatMap((row) => {
    if (ONLY_WITH_CHILDREN.includes(id)) return cellIn(row[children]);
    if (id !== "referrals") return [];
    // sites, bands and quarters have a row only where somebody was followed
    const by = row[dimension]?.kind === "label" ? row[dimension].value : null;
    return by === "site" || by === "band" || by === "quarter" ? cellIn(row[children]) : [];
  });
}

function cellIn(entry: DraftTable["rows"][number][number] | undefined): number[] {
  return entry?.kind === "count" ? [entry.cell] : [];
}
