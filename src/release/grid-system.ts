import { type Cell, type CountSystem, type Equation, smallSpan } from "./system";

/** A table of counts with a total column and a total row, as a system. Rows and columns are counted from 0. */
export interface GridSystem extends CountSystem {
  readonly rows: number;
  readonly columns: number;
  /** The cell of a row and a column; row `rows` is the total row, column `columns` the total column. */
  readonly at: (row: number, column: number) => number;
}

export interface GridOptions {
  readonly minimum: number;
  readonly loss: (count: number) => number;
  /** How a cell stands before anything is hidden: totals that may not be hidden are out already. */
  readonly totals: "table" | "out";
}

/** @throws {RangeError} when a count is not a whole number from 0 up, or the rows differ in length */
export function gridSystem(counts: readonly (readonly number[])[], options: GridOptions): GridSystem {
  const [rows, columns] = [counts.length, counts[0]?.length ?? 0];
  const whole = (count: number) => Number.isSafeInteger(count) && count >= 0;
  if (columns === 0 || !counts.every((row) => row.length === columns && row.every(whole))) {
    throw new RangeError("gridSystem: counts are whole numbers from 0 up, in rows of one length");
  }
  const full = withTotals(counts);
  const at = (row: number, column: number) => row * (columns + 1) + column;
  const cells = full.flatMap((row, r) =>
    row.map((count, c): Cell => {
      const secret = smallSpan(count, count, options.minimum);
      const isTotal = r === rows || c === columns;
      return {
        key: `${r},${c}`,
        place: `row ${r + 1}, column ${c + 1}`,
        count,
        showing: isTotal && secret === null ? options.totals : "table",
        secret: { low: 1, high: options.minimum - 1 },
        loss: options.loss(count),
      };
    }),
  );
  return { cells, equations: equationsOf(rows, columns, at), rows, columns, at };
}

/** The counts with a total column and a total row. */
export function withTotals(counts: readonly (readonly number[])[]): number[][] {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const rows = counts.map((row) => [...row, sum(row)]);
  return [...rows, rows[0]!.map((_, column) => sum(rows.map((row) => row[column] as number)))];
}

function equationsOf(rows: number, columns: number, at: GridSystem["at"]): Equation[] {
  const parts = (cells: readonly number[], total: number): Equation => ({
    terms: [...cells.map((cell) => ({ cell, coefficient: 1 })), { cell: total, coefficient: -1 }],
    equals: 0,
  });
  const [allRows, allColumns] = [upTo(rows), upTo(columns)];
  return [
    ...upTo(rows + 1).map((row) =>
      parts(
        allColumns.map((column) => at(row, column)),
        at(row, columns),
      ),
    ),
    ...upTo(columns + 1).map((column) =>
      parts(
        allRows.map((row) => at(row, column)),
        at(rows, column),
      ),
    ),
  ];
}

function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at);
}
