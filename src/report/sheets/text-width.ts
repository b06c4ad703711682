/**
 * How wide a text is, in digits of the usual font: the unit in which columns are wide. The widths are those of Arial and of
 * Liberation Sans, which has the same: Adobe's metrics of Helvetica, by classes; from memory, and looked at in print.
 */
export function widthInDigits(text: string): number {
  let width = 0;
  for (const character of text) width += CLASS_OF.get(character) ?? WIDE;
  return width;
}

/** Lines that a text takes in a column of `available` digits when it breaks between words. */
export function linesOf(text: string, available: number): number {
  return text.split("\n").reduce((total, paragraph) => total + paragraphLines(paragraph, available), 0);
}

/** The lines of a text that breaks between words, where it has to be broken by hand. */
export function linesIn(text: string, available: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && widthInDigits(`${last} ${word}`) <= available)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

const WIDE = 1.25;

const CLASS_OF: ReadonlyMap<string, number> = new Map(
  (
    [
      [0.4, "ijl'|"],
      [0.5, " Itf.,:;!/\\[]·"],
      [0.62, '()r-"“”*'],
      [0.9, "cksvxyzJ"],
      [1, "abdeghnopqu0123456789#$?L_–"],
      [1.1, "FTZ+<>=~"],
      [1.2, "ABEKPSVXY&"],
      [1.3, "CDHNRUw"],
      [1.4, "GOQ"],
      [1.5, "mM"],
      [1.7, "%W"],
    ] as const
  ).flatMap(([width, characters]) => [...characters].map((character) => [character, width] as const)),
);

function paragraphLines(paragraph: string, available: number): number {
  let lines = 1;
  let used = 0;
  for (const word of paragraph.split(" ")) {
    const wide = widthInDigits(word);
    const needed = used === 0 ? wide : used + SPACE + wide;
    if (needed <= available) {
      used = needed;
      continue;
    }
    // A word longer than the line is broken within.
    const wordLines = Math.max(1, Math.ceil(wide / available));
    lines += used === 0 ? wordLines - 1 : wordLines;
    used = wide - (wordLines - 1) * available;
  }
  return lines;
}

const SPACE = 0.5;
