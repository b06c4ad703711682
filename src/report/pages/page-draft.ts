import { isoOf, type Day } from "../../age/day";
import type { CellOut, PrintOut, SheetOut } from "../../workbook/sheets";
import { SheetDraft } from "../sheets/sheet-draft";
import { TOOL_NAME } from "../report";
import { VERSION } from "../version";

/** A page like a letter: a narrow column of side-heads, and the text beside it. */
const WIDTHS = [17, 16, 82];
const GAP_POINTS = 9;

/** A page of paper being written from the top down; one page tall, whatever it holds. */
export class PageDraft {
  private readonly draft: SheetDraft;

  constructor(name: string) {
    this.draft = new SheetDraft(
      name,
      WIDTHS.map((width) => ({ width })),
      WIDTHS.length - 1,
    );
  }

  title(text: string): void {
    this.draft.spanning(text, "title");
  }

  lead(text: string): void {
    this.draft.beside([], text, "subtitle", { extraPoints: GAP_POINTS });
  }

  /** A side-head with its lines of text. */
  section(head: string, lines: readonly string[]): void {
    lines.forEach((line, index) => this.draft.beside([headCell(head, index)], line, "note", gapAfter(lines, index)));
  }

  /** A side-head with lines that each have a name of their own. */
  namedLines(head: string, lines: readonly (readonly [name: string, text: string])[]): void {
    lines.forEach(([name, text], index) => {
      this.draft.beside([headCell(head, index), { value: name, style: "label" }], text, "note", gapAfter(lines, index));
    });
  }

  get heightPoints(): number {
    return this.draft.heightPoints;
  }

  finished(forWhom: string, asOf: Day): SheetOut {
    return this.draft.finished(internalPage(forWhom, asOf));
  }
}

/** One page of paper that says at its head whose eyes it is for. */
export function internalPage(forWhom: string, asOf: Day): PrintOut {
  const footer = `${TOOL_NAME} ${VERSION}, as of ${isoOf(asOf)}`;
  return { landscape: false, fit: "one page", header: `INTERNAL: ${forWhom}`, footer };
}

function headCell(head: string, index: number): CellOut {
  return index === 0 ? { value: head, style: "marked" } : null;
}

function gapAfter(lines: readonly unknown[], index: number) {
  return { extraPoints: index === lines.length - 1 ? GAP_POINTS : 0 };
}
