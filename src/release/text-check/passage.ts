/** A text as it is read: look-alike characters put into plain ones, and each character traced to where it came from. */
export interface Passage {
  readonly text: string;
  readonly sentences: readonly Sentence[];
  /** Where a stretch of `text` is in the text as it was written. */
  written(start: number, end: number): Stretch;
}

export interface Sentence {
  readonly start: number;
  readonly text: string;
}

/** Both ends count characters from 0; the end is not in it. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

export function passageOf(written: string): Passage {
  const origins: number[] = [];
  let text = "";
  let at = 0;
  for (const character of written) {
    const plain = character.normalize("NFKC").replace(/[\u200b\u200c\u200d\u2060\ufeff\u00ad]/g, "");
    for (let unit = 0; unit < plain.length; unit += 1) origins.push(at);
    text += plain;
    at += character.length;
  }
  origins.push(at);
  return {
    text,
    sentences: sentencesOf(text),
    written: (start, end) => ({ start: origins[start] as number, end: origins[end] as number }),
  };
}

/** Sentences end at full stops followed by space, and at line ends; a number or "No." does not end one. */
function sentencesOf(text: string): Sentence[] {
  const found: Sentence[] = [];
  let start = 0;
  for (const { index, 0: gap } of text.matchAll(
    /(?<=[.!?]["”')]?)(?<!\b(?:No|no|vs|St|approx|e\.g|i\.e|[A-Z])\.)\s+|\n+|$/g,
  )) {
    const piece = text.slice(start, index);
    const lead = piece.length - piece.trimStart().length;
    if (piece.trim() !== "") found.push({ start: start + lead, text: piece.trim() });
    start = index + gap.length;
  }
  return found;
}
