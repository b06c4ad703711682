/** Pixels of a column that is so many characters of the usual font wide. Source: ECMA-376 Part 1, 18.3.1.13 "col", at 7 pixels a digit. */
export function columnPixels(characters: number): number {
  return Math.floor(characters * 7 + 5);
}

/** Pixels of a row height in points, at 96 to the inch. */
export function rowPixels(points: number): number {
  return Math.round((points * 96) / 72);
}

/** Rows and columns a sheet offers past the last one filled, to type in. */
export const SPARE = { rows: 60, columns: 12, leastRows: 200, leastColumns: 30 } as const;
