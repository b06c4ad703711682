import { isoOf, type Day } from "../../age/day";
import type { CellOut, PrintOut, SheetOut } from "../../workbook/sheets";
import { SheetDraft } from "../sheets/sheet-draft";
import { TOOL_NAME } from "../report";
import { VERSION } from "../version";

/** A page like a letter: a narrow column of side-heads, and the text beside it. */
const WIDTHS = [17, 16, 40, 46];
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

  /** A side-head with rows of a name and two texts beside it, under their own headings. */
  columns(
    head: string,
    headings: readonly [string, string],
    rows: readonly (readonly [name: string, first: string, second: string])[],
  ): void {
    this.draft.row([
      headCell(head, 0),
      { value: null, style: "heading" },
      ...headings.map((value) => ({ value, style: "heading" as const })),
    ]);
    rows.forEach(([name, first, second], index) => {
      const texts = [first, second].map((text) => ({ value: text === "" ? null : text, style: "note" as const }));
      this.draft.row([null, { value: name, style: "label" }, ...texts], gapAfter(rows, index).extraPoints + 2);
    });
  }

  /** Small print below everything else. */
  foot(lines: readonly string[]): void {
    for (const line of lines) this.draft.beside([null], line, "small", {});
  }

  get heightPoints(): number {
    return this.draft.heightPoints;
  }

  finished(forWhom: string, asOf: Day): SheetOut {
    return this.draft.finished(onePage(forWhom, asOf));
  }
}

/** One page of paper that says at its head whose eyes it is for. */
export function onePage(header: string, asOf: Day): PrintOut {
  return { landscape: false, fit: "one page", header, footer: `${TOOL_NAME} ${VERSION}, as of ${isoOf(asOf)}` };
}

function headCell(head: string, index: number): CellOut {
  return index === 0 ? { value: head, style: "marked" } : null;
}

function gapAfter(lines: readonly unknown[], index: number) {
  return { extraPoints: index === lines.length - 1 ? GAP_POINTS : 0 };
}
