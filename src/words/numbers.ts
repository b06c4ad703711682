/** `12,345`. */
export function counted(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, ",");
}

/** `1 child`, `12 children`. */
export function plural(count: number, one: string, many: string): string {
  return `${counted(count)} ${count === 1 ? one : many}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** From a smaller base no sentence, headline or chart label gives a percent (METHOD.md, section 9). */
export const LEAST_BASE_OF_A_PERCENT = 20;

/** `62.4% (53 of 85)`, and `3 of 3` from a base under 20: a percent is never printed without its counts. */
export function shareInWords(count: number, of: number): string {
  const numbers = `${counted(count)} of ${counted(of)}`;
  return of < LEAST_BASE_OF_A_PERCENT ? numbers : `${((100 * count) / of).toFixed(1)}% (${numbers})`;
}

/** `210 of 240 (88%)`, and `9 of 11` where a percent would say too much: the count comes first. */
export function shareOf(count: number, of: number): string {
  const counts = `${counted(count)} of ${counted(of)}`;
  return of < LEAST_BASE_OF_A_PERCENT ? counts : `${counts} (${wholePercent(count / of)})`;
}

/** `84%`; never 0% or 100% where it is neither. */
export function wholePercent(share: number): string {
  if (share > 0 && share < 0.005) return "under 1%";
  if (share < 1 && share >= 0.995) return "over 99%";
  return `${Math.round(100 * share)}%`;
}

/** The same, with words for nobody. */
export function percentOf(count: number, of: number): string {
  return of === 0 ? "none (0 of 0)" : shareInWords(count, of);
}

/** `p 0.012`: three decimals are what 999 repeated draws can say. */
export function pInWords(p: number): string {
  return p < 0.001 ? "p below 0.001" : `p ${p.toFixed(3)}`;
}
