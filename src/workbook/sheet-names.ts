const LONGEST_NAME = 31;

/**
 * Sheet names that Excel accepts, in the order given: at most 31 characters, none of `[ ] : * ? / \`, no apostrophe at
 * either end, not "History", not blank, and no two the same without regard to case.
 * Source: Microsoft Support, "Rename a worksheet".
 */
export function safeSheetNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const safe = unused(safeName(name), taken);
    taken.add(safe.toLowerCase());
    return safe;
  });
}

function safeName(name: string): string {
  const clean = Array.from(name, (each) => (isForbidden(each) ? " " : each)).join("");
  const text = trimmed(cut(trimmed(clean.replace(/\s+/g, " ")), LONGEST_NAME));
  if (text === "") return "Sheet";
  return text.toLowerCase() === "history" ? `${text} sheet` : text;
}

function isForbidden(character: string): boolean {
  return "[]:*?/\\".includes(character) || character < " " || /\p{Cc}|\p{Cs}|\p{Cn}/u.test(character);
}

function trimmed(text: string): string {
  return text.replace(/^[\s']+|[\s']+$/g, "");
}

function unused(name: string, taken: ReadonlySet<string>): string {
  for (let copy = 2, tried = name; ; copy += 1) {
    if (!taken.has(tried.toLowerCase())) return tried;
    const ending = ` (${copy})`;
    tried = cut(name, LONGEST_NAME - ending.length) + ending;
  }
}

/** Excel counts UTF-16 units; a pair of them is never cut in two. */
function cut(text: string, length: number): string {
  const short = text.slice(0, length);
  return /[\uD800-\uDBFF]$/.test(short) ? short.slice(0, -1) : short;
}
