import type { ReleasedTable, ReleasedValue } from "../../../src/release/release-table";
import type { Counts } from "./counts";
import type { SkillRow } from "./random-program";

/** What is printed on a release, beside its tables. */
export interface Printed {
  readonly asOf: string;
  readonly from: string;
  readonly by: readonly string[];
  readonly edges: readonly number[];
  readonly tables: readonly ReleasedTable[];
}

/** A row of a table under the keys of its columns. */
export type PrintedRow = Readonly<Record<string, ReleasedValue>>;

/** Everything that the releases of one set of records print, read into one system by somebody who knows the definitions. */
export interface Reading {
  readonly counts: Counts;
  readonly skills: readonly SkillRow[];
  /** Of all releases together. */
  readonly all: readonly Printed[];
  /** Told each count that a row prints or gives away, which must not be proved to be small. */
  readonly onSecret: (name: string) => void;
  /** The true count of a name, for figures that give it back; null: figures are not read. */
  readonly truth: ((name: string) => number) | null;
  /** Printed counts lie less than this from the truth; 1: they are true. */
  readonly base: number;
}

export function rowsOf({ columns, rows }: ReleasedTable): PrintedRow[] {
  return rows.map((row) => Object.fromEntries(columns.map(({ key }, at) => [key, row[at] ?? null])));
}

/** Takes a count that is printed: a number, or a range; the symbol for hidden tells nothing. */
export function take({ counts, onSecret, base }: Reading, name: string, value: ReleasedValue): void {
  counts.of(name);
  onSecret(name);
  if (typeof value === "number") counts.know(name, Math.max(0, value - base + 1), value + base - 1);
  else if (value !== null && typeof value === "object" && "from" in value) counts.know(name, value.from, value.to);
}

/** A figure gives back the counts it is made of; a share alone gives how they stand to one another. */
export function takeFigure({ counts, truth }: Reading, value: ReleasedValue, names: readonly string[]): void {
  if (truth === null || typeof value !== "number") return;
  names.forEach((name) => counts.know(name, truth(name)));
}

export function takeShare({ counts, truth }: Reading, value: ReleasedValue, part: string, whole: string): void {
  if (truth === null || typeof value !== "number") return;
  const of = Array.from({ length: 2000 }, (_, at) => at + 1).find(
    (at) => Math.abs(value * at - Math.round(value * at)) < 1e-9,
  );
  if (of === undefined) throw new Error(`${value} is no share of whole counts`);
  counts.tie([
    [part, of],
    [whole, -Math.round(value * of)],
  ]);
}

export function groupOf(row: PrintedRow, by: readonly string[]): string {
  return by.map((column) => `${column}=${String(row[column])}`).join(";");
}
