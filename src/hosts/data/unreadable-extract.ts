/** An extract that cannot be read, in a sentence that says where and what to do. Never carries the text of a cell. */
export class UnreadableExtract extends Error {
  override readonly name = "UnreadableExtract";
}

export function torn(line: number, what: string): never {
  throw new UnreadableExtract(
    `line ${line} ${what}. The file is damaged or was cut off: export it again. Nothing of it was used.`,
  );
}
