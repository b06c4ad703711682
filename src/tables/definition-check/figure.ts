import type { Skill } from "../../records/records";
import type { Table } from "../table";

/** Tables of which one figure can be checked, with the keys that find its row after the groups. */
const ROW_KEYS = {
  "met-by-band": ["skill", "band"],
  "met-by-band-left": ["skill", "band"],
  "expected-by-now": ["skill", "kind"],
  "age-when-met": ["skill"],
} as const;

export type CheckedTable = keyof typeof ROW_KEYS;

/** Figures that are limits of another one, or say how it was estimated: no choice is about them. */
const NOT_FIGURES = /lower|upper|gradient/i;

/** One figure of one table. */
export interface Figure {
  readonly table: CheckedTable;
  /** The values of the columns of `by`. */
  readonly groups: readonly string[];
  /** The id of a skill, or "all" for the skills of an area. */
  readonly skill: string;
  /** Where `skill` is "all". */
  readonly area: string | null;
  /** The label of the age group, where the table has them. */
  readonly band: string | null;
  /** The kind of window, where the table adds up the skills of an area by it. */
  readonly kind: string | null;
  readonly column: string;
}

export type FigureRead = { readonly figure: Figure } | { readonly message: string };

/**
 * The figure that a text such as `met-by-band/walk-alone/"12 to <18 months"/shareMet` stands for. The values of groups come
 * after the table; "all" is followed by its area, and in expected-by-now by the kind of window.
 */
export function figureFrom(text: string, skills: readonly Skill[], groupCount: number): FigureRead {
  const pieces = piecesOf(text);
  const table = pieces.shift();
  if (!isChecked(table)) return { message: `Begin the figure with one of these tables: ${CHECKED.join(", ")}.` };
  const groups = pieces.splice(0, groupCount);
  const skill = skillNamed(pieces.shift() ?? "", skills);
  if (groups.length < groupCount || skill === null)
    return { message: `${usageOf(table, groupCount)} No skill of that name is in Skills.` };
  const isAll = skill === "all";
  const area = isAll ? (pieces.shift() ?? null) : null;
  const keys = ROW_KEYS[table].filter((key) => key === "band" || (key === "kind" && isAll));
  const [first] = pieces.splice(0, keys.length);
  const [column] = pieces;
  if (pieces.length !== 1 || column === undefined || NOT_FIGURES.test(column))
    return { message: usageOf(table, groupCount) };
  const key = first ?? null;
  return {
    figure: {
      table,
      groups,
      skill,
      area,
      column,
      band: keys.includes("band") ? key : null,
      kind: keys.includes("kind") ? key : null,
    },
  };
}

/** The row of a figure in its table, or null. */
export function rowOfFigure(table: Pick<Table, "columns" | "rows">, figure: Figure): Table["rows"][number] | null {
  const at = (key: string) => table.columns.findIndex((column) => column.key === key);
  const wanted = (["skill", "area", "band", "kind"] as const).flatMap((key) =>
    figure[key] === null ? [] : [[at(key), figure[key]] as const],
  );
  const isRow = (row: Table["rows"][number]) =>
    figure.groups.every((value, column) => row[column] === value) &&
    wanted.every(([column, value]) => row[column] === value);
  return table.rows.find(isRow) ?? null;
}

/** Columns of shares, from 0 to 1. */
export function isShare(column: string): boolean {
  return column.startsWith("share") || column === "lowest" || column === "highest";
}

const CHECKED = Object.keys(ROW_KEYS) as readonly CheckedTable[];

function isChecked(name: string | undefined): name is CheckedTable {
  return CHECKED.some((each) => each === name);
}

/** Split at slashes outside quotation marks. */
function piecesOf(text: string): string[] {
  return (text.match(/"[^"]*"|[^/]+/g) ?? []).map((piece) => piece.trim().replace(/^"(.*)"$/, "$1"));
}

function skillNamed(name: string, skills: readonly Skill[]): string | null {
  const same = (text: string) => text.toLowerCase() === name.toLowerCase();
  if (name === "all") return name;
  return (skills.find(({ id }) => same(id)) ?? skills.find(({ label }) => same(label)))?.id ?? null;
}

function usageOf(table: CheckedTable, groupCount: number): string {
  const groups = groupCount === 0 ? "" : "VALUE OF EACH GROUP/";
  const skill = table === "expected-by-now" ? "SKILL, or all/AREA/KIND" : "SKILL";
  const rest = table.startsWith("met-by-band") ? `${skill}, or all/AREA/"AGE GROUP"` : skill;
  return `Name the figure as ${table}/${groups}${rest}/COLUMN, such as met-by-band/walk-alone/"12 to <18 months"/shareMet; limits cannot be checked.`;
}
