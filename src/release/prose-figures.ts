import type { Table, TableColumn } from "../tables/table";
import type { ReleasedTable, ReleasedValue } from "./release-table";
import { isHidden, isRange, textOf } from "./words/read-released";

/** A number of the release, or one that it holds back, and where it stands. */
export interface Figure {
  readonly value: number;
  readonly kind: "count" | "share" | "months" | "other";
  readonly place: string;
}

/** Every number that a released table shows. */
export function shownFigures(table: ReleasedTable): Figure[] {
  return table.rows.flatMap((row) =>
    row.flatMap((value, at) => {
      const column = table.columns[at]!;
      return numbersOf(value).map((number) => figureOf(number, column, placeOf(table, row, column)));
    }),
  );
}

/** The true numbers behind figures that are held back, ranged or rounded: known only inside the program, and never printed. */
export function hiddenFigures(released: ReleasedTable, truth: Table): Figure[] {
  const trueRows = new Map(truth.rows.map((row) => [namesOf(truth.columns, row), row]));
  const trueAt = new Map(truth.columns.map(({ key }, index) => [key, index]));
  return released.rows.flatMap((row) => {
    const known = trueRows.get(namesOf(released.columns, row));
    return row.flatMap((value, at) => {
      const column = released.columns[at]!;
      const number = known?.[trueAt.get(column.key) ?? -1];
      const held = isHidden(value) || isRange(value) || (typeof value === "number" && value !== number);
      return held && typeof number === "number" ? [figureOf(number, column, placeOf(released, row, column))] : [];
    });
  });
}

function figureOf(value: number, { unit }: TableColumn, place: string): Figure {
  if (unit === "share") return { value: value * 100, kind: "share", place };
  if (unit === "percent") return { value, kind: "share", place };
  if (unit === "months" || unit === "months (mean length)") return { value, kind: "months", place };
  return { value, kind: Number.isInteger(value) ? "count" : "other", place };
}

function numbersOf(value: ReleasedValue): number[] {
  if (isRange(value)) return [value.from, value.to];
  return typeof value === "number" ? [value] : [];
}

function placeOf(table: ReleasedTable, row: readonly ReleasedValue[], { label }: TableColumn): string {
  const names = table.columns.flatMap((column, at) => (isName(column) ? [textOf(row[at] ?? null)] : []));
  return `${table.id}, ${names.filter((name) => name !== "").join(", ")}: ${label}`;
}

function namesOf(columns: readonly TableColumn[], row: readonly ReleasedValue[]): string {
  const names = columns.flatMap((column, at) => (isName(column) ? [[column.key, textOf(row[at] ?? null)]] : []));
  return JSON.stringify(names.sort(([a], [b]) => ((a as string) < (b as string) ? -1 : 1)));
}

/** Texts name a row, but for those that say how a figure came about; so do an age and the number of a statement. */
function isName({ key, unit }: TableColumn): boolean {
  return (unit === "text" && !NO_NAMES.has(key)) || key === "age" || key === "statement";
}

const NO_NAMES: ReadonlySet<string> = new Set(["method", "reason", "provisional"]);
