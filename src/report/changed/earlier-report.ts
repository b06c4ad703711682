import { parseSettings, type Settings } from "../../settings/settings";
import type { EarlierCell, EarlierCounts } from "../../tables/what-changed/changes";
import { MEASURES } from "../../tables/what-changed/parts";
import { type MadeFrom, madeFromReport } from "../again/provenance-line";

/** An earlier REPORT.json, as far as later figures are compared with it. */
export interface EarlierReport {
  readonly made: MadeFrom;
  readonly settings: Settings;
  readonly counts: EarlierCounts;
}

/** Reads an earlier REPORT.json; or says why nothing can be compared with it. */
export function earlierReportOf(json: unknown): { readonly report: EarlierReport } | { readonly reason: string } {
  const made = madeFromReport(json);
  if (made === null) return { reason: "It is not a REPORT.json that windowline report wrote." };
  const parsed = parseSettings(made.settings, 1900);
  if ("messages" in parsed) return { reason: `Its settings cannot be read: ${parsed.messages.join(" ")}` };
  const { settings } = parsed;
  if (settings.asOf === null) return { reason: "It does not say the day that its figures are for." };
  const cells = cellsOf((json as { tables: readonly unknown[] }).tables, settings.by.length);
  if (cells === null) {
    return { reason: "It has no table met-by-band: make it again with that table, or give the earlier workbook." };
  }
  return { report: { made, settings, counts: { by: cells.by, asOf: settings.asOf, cells: cells.cells } } };
}

/** Rows over the skills of an area are left out: they are added up anew. */
function cellsOf(tables: readonly unknown[], groups: number): { by: string[]; cells: EarlierCell[] } | null {
  const table = tables.map(shapeOf).find((each) => each?.id === "met-by-band");
  if (!table) return null;
  const keys = table.columns.map(({ key }) => key);
  const names = ["skill", "area", "band"] as const;
  const at = (key: string) => keys.indexOf(key, groups);
  if ([...names, ...MEASURES].some((key) => at(key) < 0)) return null;
  const rows = table.rows.filter((row) => row[at("skill")] !== "all");
  if (!rows.every((row) => MEASURES.every((measure) => Number.isInteger(row[at(measure)])))) return null;
  const cells = rows.map((row) => ({
    group: row.slice(0, groups).map(String),
    ...(Object.fromEntries(names.map((name) => [name, String(row[at(name)])])) as Record<
      (typeof names)[number],
      string
    >),
    ...(Object.fromEntries(MEASURES.map((name) => [name, row[at(name)]])) as Record<(typeof MEASURES)[number], number>),
  }));
  return { by: keys.slice(0, groups), cells };
}

interface JsonTable {
  readonly id: string;
  readonly columns: readonly { readonly key: string }[];
  readonly rows: readonly (readonly unknown[])[];
}

function shapeOf(value: unknown): JsonTable | null {
  const { id, columns, rows } = (value ?? {}) as Partial<JsonTable>;
  const isWhole =
    typeof id === "string" &&
    Array.isArray(columns) &&
    columns.every((column) => typeof (column as { key?: unknown } | null)?.key === "string") &&
    Array.isArray(rows) &&
    rows.every((row) => Array.isArray(row));
  return isWhole ? ({ id, columns, rows } as JsonTable) : null;
}
