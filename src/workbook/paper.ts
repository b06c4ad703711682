/** Inches, the same on both papers. */
export const MARGINS = { left: 0.45, right: 0.45, top: 0.5, bottom: 0.65, header: 0.3, footer: 0.3 } as const;

const POINTS_PER_INCH = 72;
/** Points. Pages are laid out for whichever is the smaller of the two in each direction. */
const LETTER = { short: 612, long: 792 } as const;
const A4 = { short: 595, long: 842 } as const;

/** Points within the margins that both Letter and A4 have. */
export function roomOnPaper(landscape: boolean): { readonly width: number; readonly height: number } {
  const across = (MARGINS.left + MARGINS.right) * POINTS_PER_INCH;
  const down = (MARGINS.top + MARGINS.bottom) * POINTS_PER_INCH;
  const [short, long] = [Math.min(LETTER.short, A4.short), Math.min(LETTER.long, A4.long)];
  return landscape ? { width: long - across, height: short - down } : { width: short - across, height: long - down };
}

/** Points of a column of so many characters: seven pixels each and five beside them (ECMA-376 Part 1, 18.3.1.13). */
export function columnPoints(characters: number): number {
  return 0.75 * Math.trunc(7 * characters + 5);
}
