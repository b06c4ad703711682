/**
 * A file that cannot be read as a workbook. The message is one sentence for the person who chose the file: what is wrong
 * and what to do. It never holds the text of a cell.
 */
export class UnreadableWorkbook extends Error {
  override readonly name = "UnreadableWorkbook";
}

export function refuse(message: string): never {
  throw new UnreadableWorkbook(message);
}

/** A part that breaks the rules of its format, in the words a person can act on. */
export function refusePart(part: string, what: string): never {
  return refuse(`The part ${printable(part)} of the file ${what}: open the file in Excel and save it again as .xlsx.`);
}

export function refuseDamaged(part: string): never {
  throw damagedPart(part);
}

export function damagedPart(part: string): UnreadableWorkbook {
  const advice = "take a fresh copy of the file, or open it in Excel and save it again";
  return new UnreadableWorkbook(`The part ${printable(part)} of the file is damaged: ${advice}.`);
}

/** Names come from the file: nothing in them may reach a terminal as a command or fill a screen. */
export function printable(name: string): string {
  const plain = name.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, "?");
  return plain.length > 80 ? `${plain.slice(0, 79)}…` : plain;
}
