/** `12,345`. */
export function counted(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, ",");
}

/** From a smaller base no sentence, headline or chart label gives a percent (METHOD.md, section 9). */
export const LEAST_BASE_OF_A_PERCENT = 20;

/** `62.4% (53 of 85)`, and `3 of 3` from a base under 20: a percent never stands without its numbers. */
export function shareInWords(count: number, of: number): string {
  const numbers = `${counted(count)} of ${counted(of)}`;
  return of < LEAST_BASE_OF_A_PERCENT ? numbers : `${((100 * count) / of).toFixed(1)}% (${numbers})`;
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
