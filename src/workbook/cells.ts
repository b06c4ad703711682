/**
 * The cells of a sheet as typed columns: what every host hands to the core, and the only form in which the core sees a
 * workbook. Rows and columns count from 0.
 */
export interface Grid {
  readonly rowCount: number;
  /** By column number; a column that holds nothing may be absent. */
  readonly columns: readonly (GridColumn | undefined)[];
  /** What the `values` of text and error cells point to. */
  readonly strings: readonly string[];
}

/** One column: cell r is empty where r is past the end of `kinds`. */
export interface GridColumn {
  readonly kinds: Uint8Array;
  /** The number of a number or date cell; 1 or 0 of a boolean; an index into `strings` of text and errors. */
  readonly values: Float64Array;
}

export const CELL = {
  empty: 0,
  number: 1,
  /** A number shown as a date. */
  date: 2,
  text: 3,
  boolean: 4,
  /** `#N/A` and its kind. */
  error: 5,
  /** A formula without a result in the file. */
  noCachedValue: 6,
} as const;

export type CellKind = (typeof CELL)[keyof typeof CELL];

export function kindAt(grid: Grid, row: number, column: number): CellKind {
  return (grid.columns[column]?.kinds[row] ?? CELL.empty) as CellKind;
}

/** The number of a number, date or boolean cell. */
export function numberAt(grid: Grid, row: number, column: number): number {
  return grid.columns[column]?.values[row] ?? 0;
}

/** The text of a text or error cell. */
export function stringAt(grid: Grid, row: number, column: number): string {
  return grid.strings[grid.columns[column]?.values[row] ?? -1] ?? "";
}

/** `C12`, from row 11 and column 2. */
export function a1(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** Row and column of an address such as `C12`; null where it is none. */
export function placeOfA1(address: string): { readonly row: number; readonly column: number } | null {
  const match = /^([A-Z]+)(\d+)$/.exec(address);
  if (!match) return null;
  const [, letters, digits] = match as unknown as [string, string, string];
  const column = [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(digits) - 1, column };
}

/** `C2:C73`. */
export function a1Range(top: number, left: number, bottom: number, right: number): string {
  return `${a1(top, left)}:${a1(bottom, right)}`;
}

export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}
