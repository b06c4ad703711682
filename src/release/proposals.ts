import type { Settings } from "../settings/settings";
import { partsOfKey } from "./draft/keys";
import type { DraftTable } from "./release-table";
import type { CountSystem } from "./system";

/** What hiding would leave of a release. */
export interface Hiding {
  readonly drafts: readonly DraftTable[];
  readonly system: CountSystem;
  readonly isHidden: (cell: number) => boolean;
  readonly settings: Pick<Settings, "edges" | "by" | "minimumCell">;
}

/** Above this share of hidden counts a table says too little to be worth its place. */
const MOST_HIDDEN = 0.5;
/** Other counts are hidden for the small ones' sake, often about as many (common practice, no source). */
const MOST_SMALL = 0.25;

/**
 * Ways to show more by cutting less finely, where more than half of the counts of a table would be hidden: fewer age
 * bands, then no groups, then areas instead of skills; each with the setting to use.
 */
export function proposals({ drafts, system, isHidden, settings }: Hiding): string[] {
  return drafts.flatMap((draft) => {
    const cells = cellsOf(draft);
    const hidden = cells.filter(isHidden).length;
    if (hidden <= MOST_HIDDEN * cells.length) return [];
    const head = `${draft.id}: more than half of its counts would be hidden.`;
    return [bandProposal(draft, system, settings), groupProposal(settings), areaProposal(draft)]
      .filter((each) => each !== null)
      .map((each) => `${head} ${each}`);
  });
}

function bandProposal(draft: DraftTable, system: CountSystem, settings: Hiding["settings"]): string | null {
  if (!draft.columns.some(({ key }) => key === "band")) return null;
  const edges = fewerEdges(draft, system, settings);
  return edges === null ? null : `Fewer age groups show more: set edges to ${edges.join(",")}.`;
}

function groupProposal({ by }: Hiding["settings"]): string | null {
  return by.length === 0 ? null : `All groups together show more: leave out by (${by.join(", ")}).`;
}

function areaProposal({ rows, columns }: DraftTable): string | null {
  const at = columns.findIndex(({ key }) => key === "skill");
  const hasAreas = rows.some((row) => row[at]?.kind === "label" && row[at].value === "all");
  return hasAreas
    ? 'Areas show more than skills: read the rows with skill "all", which count all skills of an area.'
    : null;
}

/**
 * The most bands that leave at most a quarter of the counts small, or else the fewest: of neighbouring bands every second edge
 * goes, again and again, and the first and the last stay. Null where there is nothing to merge.
 */
export function fewerEdges(
  draft: DraftTable,
  system: CountSystem,
  { edges, minimumCell }: Pick<Settings, "edges" | "minimumCell">,
): readonly number[] | null {
  let last: readonly number[] | null = null;
  for (let next = halved(edges); next !== null; next = halved(next)) {
    last = next;
    if (smallShare(draft, system, next, minimumCell) <= MOST_SMALL) break;
  }
  return last;
}

function halved(edges: readonly number[]): readonly number[] | null {
  return edges.length <= 2 ? null : edges.filter((_, at) => at % 2 === 0 || at === edges.length - 1);
}

/** Of the counts that a table would have under other edges, the share of small ones; families apart. */
function smallShare(draft: DraftTable, system: CountSystem, edges: readonly number[], minimum: number): number {
  const merged = new Map<string, number>();
  for (const cell of cellsOf(draft)) {
    const { key, count } = system.cells[cell]!;
    const parts = partsOfKey(key);
    const from = Number(parts.ages.split("..")[0] || -Infinity);
    const name = JSON.stringify({ ...parts, ages: edges.filter((edge) => edge <= from).length });
    merged.set(name, (merged.get(name) ?? 0) + (count ?? 0));
  }
  const counts = [...merged.values()];
  return counts.filter((count) => count > 0 && count < minimum).length / Math.max(1, counts.length);
}

function cellsOf({ rows }: DraftTable): number[] {
  return [...new Set(rows.flat().flatMap((entry) => (entry.kind === "count" ? [entry.cell] : [])))];
}
