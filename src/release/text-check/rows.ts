import type { ReleasableId, Table, TableColumn } from "../../tables/table";
import type { ReleasedTable, ReleasedValue } from "../release-table";
import { isHidden, isRange, textOf } from "../words/read-released";
import type { Counted } from "./numbers";

/** One row of a release: what it shows, what it holds back, and the names that it goes by. */
export interface TextRow {
  readonly table: ReleasableId;
  /** The names by the key of their column, in small letters: the value, and the label of a skill. */
  readonly names: ReadonlyMap<string, readonly string[]>;
  readonly shown: readonly Figure[];
  /** The true numbers behind figures that are held back, ranged or rounded: never printed. */
  readonly hidden: readonly Figure[];
}

/** A number of the release, or one that it holds back, and where it is. */
export interface Figure {
  readonly value: number;
  readonly kind: "count" | "share" | "months" | "other";
  /** Whom a count counts; null for other figures. */
  readonly counts: Counted | null;
  readonly place: string;
}

type SkillLabels = readonly { readonly id: string; readonly label: string }[];

/** The rows of a release, with the true numbers where the program's own tables are given. */
export function textRows(released: readonly ReleasedTable[], truth: readonly Table[], skills: SkillLabels): TextRow[] {
  const labels = new Map(skills.map(({ id, label }) => [id, label.toLowerCase()]));
  return released.flatMap((table) => {
    const trueRow = trueRows(truth.find(({ id }) => id === table.id));
    return table.rows.map((row) => textRow(table, row, trueRow(table, row), labels));
  });
}

type KnownRow = (key: string) => number | null;

function textRow(
  table: ReleasedTable,
  row: readonly ReleasedValue[],
  known: KnownRow,
  labels: ReadonlyMap<string, string>,
): TextRow {
  const shown: Figure[] = [];
  const hidden: Figure[] = [];
  row.forEach((value, at) => {
    const column = table.columns[at]!;
    if (isName(column)) return;
    const figure = (number: number) => figureOf(number, table, column, row);
    shown.push(...numbersOf(value).map(figure));
    const truth = known(column.key);
    const isHeld = isHidden(value) || isRange(value) || (typeof value === "number" && value !== truth);
    if (isHeld && truth !== null) hidden.push(figure(truth));
  });
  return { table: table.id, names: namesOf(table, row, labels), shown, hidden };
}

function trueRows(truth: Table | undefined): (table: ReleasedTable, row: readonly ReleasedValue[]) => KnownRow {
  if (!truth) return () => () => null;
  const rows = new Map(truth.rows.map((row) => [nameKey(truth.columns, row), row]));
  const position = new Map(truth.columns.map(({ key }, at) => [key, at]));
  return ({ columns }, row) => {
    const known = rows.get(nameKey(columns, row));
    return (key) => {
      const value = known?.[position.get(key) ?? -1];
      return typeof value === "number" ? value : null;
    };
  };
}

function figureOf(value: number, table: ReleasedTable, column: TableColumn, row: readonly ReleasedValue[]): Figure {
  const { unit, key } = column;
  const place = placeOf(table, row, column);
  if (unit === "share") return { value: value * 100, kind: "share", counts: null, place };
  if (unit === "percent") return { value, kind: "share", counts: null, place };
  if (unit === "months" || unit === "months (mean length)") return { value, kind: "months", counts: null, place };
  if (!Number.isInteger(value)) return { value, kind: "other", counts: null, place };
  return { value, kind: "count", counts: countsOf(table, key, row), place };
}

/** The rows of an area add up checks of several skills: no number of them is one of children. */
function countsOf({ id, columns }: ReleasedTable, key: string, row: readonly ReleasedValue[]): Counted {
  const skill = row[columns.findIndex((column) => column.key === "skill")];
  if (skill === "all") return "skill checks";
  return id.startsWith("referral") && !/^children/i.test(key) ? "referrals" : "children";
}

function numbersOf(value: ReleasedValue): number[] {
  if (isRange(value)) return [value.from, value.to];
  return typeof value === "number" ? [value] : [];
}

function placeOf(table: ReleasedTable, row: readonly ReleasedValue[], { label }: TableColumn): string {
  const names = table.columns.flatMap((column, at) => (isName(column) ? [textOf(row[at] ?? null)] : []));
  return `${table.id}, ${names.filter((name) => name !== "").join(", ")}: ${label}`;
}

function namesOf(
  { columns }: ReleasedTable,
  row: readonly ReleasedValue[],
  labels: ReadonlyMap<string, string>,
): Map<string, string[]> {
  return new Map(
    columns.flatMap((column, at): [string, string[]][] => {
      const text = textOf(row[at] ?? null);
      if (!isName(column) || text === "" || text === "all") return [];
      const label = column.key === "skill" ? labels.get(text) : undefined;
      return [[column.key, [text.toLowerCase(), ...(label === undefined ? [] : [label])]]];
    }),
  );
}

function nameKey(columns: readonly TableColumn[], row: readonly ReleasedValue[]): string {
  const names = columns.flatMap((column, at) => (isName(column) ? [[column.key, textOf(row[at] ?? null)]] : []));
  return JSON.stringify(names.sort(([a], [b]) => ((a as string) < (b as string) ? -1 : 1)));
}

/** Texts name a row, but for those that say how a figure came about; so do an age and the number of a statement. */
function isName({ key, unit }: TableColumn): boolean {
  return (unit === "text" && !NO_NAMES.has(key)) || key === "age" || key === "statement";
}

const NO_NAMES: ReadonlySet<string> = new Set(["method", "reason", "provisional"]);
