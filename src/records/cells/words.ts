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

export function isBlankText(text: string): boolean {
  return !SOMETHING.test(text);
}

/** Values that differ only in case or spaces are one, spelled as the first of them is. */
export function oneSpelling(values: readonly string[]): string[] {
  const spelling = new Map<string, string>();
  return values.map((value) => {
    const key = keyOf(value);
    const first = spelling.get(key) ?? displayOf(value);
    spelling.set(key, first);
    return first;
  });
}
