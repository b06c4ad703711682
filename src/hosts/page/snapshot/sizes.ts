/** A digit of the grid's font, Arial of 11 points: 0.556 of its size (its metrics, from memory). Excel's usual font has 7. */
const DIGIT_PIXELS = 0.556 * 11 * (96 / 72);

/** Pixels of a column that is so many characters of the usual font wide. Source: ECMA-376 Part 1, 18.3.1.13 "col". */
export function columnPixels(characters: number): number {
  return Math.floor(characters * DIGIT_PIXELS + 5);
}

/** Pixels of a row height in points, at 96 to the inch. */
export function rowPixels(points: number): number {
  return Math.round((points * 96) / 72);
}

/** Rows and columns a sheet offers past the last one filled, to type in. */
export const SPARE = { rows: 60, columns: 12, leastRows: 200, leastColumns: 30 } as const;
