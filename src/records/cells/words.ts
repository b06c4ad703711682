const ZERO_WIDTH = /[\u200B-\u200D\u2060\uFEFF]/g;
/** ASCII, which none of the foldings below change but for case. */
const PLAIN = /^[ -~\t\r\n]*$/;
const SOMETHING = /[^\s\u200B-\u200D\u2060\uFEFF]/;

/** A text as it is shown: compatibility forms made plain (NFKC), without outer and zero-width spaces. */
export function displayOf(text: string): string {
  if (PLAIN.test(text)) return text.trim();
  return text.normalize("NFKC").replace(ZERO_WIDTH, "").trim();
}

/** What ids, skills and words are compared by: the display text, case folded. */
export function keyOf(text: string): string {
  if (PLAIN.test(text)) return text.trim().toLowerCase();
  return displayOf(text).toLowerCase().replaceAll("ß", "ss").replaceAll("ς", "σ");
}

/** What headings and table names are compared by: through case, spaces, accents and punctuation. */
export function headingKey(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase().replace(/[^a-z0-9]/g, "");
  return keyOf(text)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]/gu, "");
}

/** What words for results are compared by: through case, spaces, hyphens and full stops. A slash counts: N/O, not observed, is not no. */
export function wordKey(text: string): string {
  const key = keyOf(text);
  return key.replace(/[\s_.-]+/g, " ").trim() || key;
}

export function isBlankText(text: string): boolean {
  return !SOMETHING.test(text);
}

/** Values that differ only in case or spaces are one, spelled as most of them are; the first of equals. */
export function oneSpelling(values: readonly string[]): string[] {
  const counts = new Map<string, Map<string, number>>();
  for (const value of values) {
    const own = counts.get(keyOf(value)) ?? new Map<string, number>();
    counts.set(keyOf(value), own.set(displayOf(value), (own.get(displayOf(value)) ?? 0) + 1));
  }
  const spelling = new Map([...counts].map(([key, own]) => [key, mostFrequent(own)]));
  return values.map((value) => spelling.get(keyOf(value)) as string);
}

function mostFrequent(counts: ReadonlyMap<string, number>): string {
  let best = "";
  let most = 0;
  for (const [text, count] of counts) {
    if (count > most) [best, most] = [text, count];
  }
  return best;
}
