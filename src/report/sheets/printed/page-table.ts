import type { CellOut, CellStyle } from "../../../workbook/sheets";
import type { PrintedPage, Span } from "./printed-page";

export interface PageColumn<Row> {
  readonly heading: string;
  /** How many columns of the page it takes. */
  readonly breadth: number;
  readonly align: "left" | "middle" | "right";
  readonly value: (row: Row) => string | CellOut;
}

const BODY = { left: "cell", middle: "cellMiddle", right: "cellRight" } as const;
const HEADING = { left: "cellHeading", middle: "cellHeadingMiddle", right: "cellHeadingRight" } as const;

/** A small table on a page, its columns over those of the page. */
export function pageTable<Row>(page: PrintedPage, columns: readonly PageColumn<Row>[], rows: readonly Row[]): void {
  const spans = columns.map((_, at): Span => {
    const from = columns.slice(0, at).reduce((sum, { breadth }) => sum + breadth, 0);
    return { from, to: from + (columns[at] as PageColumn<Row>).breadth - 1 };
  });
  const styled = (value: string | CellOut, style: CellStyle): CellOut =>
    typeof value === "object" && value !== null ? value : { value, style };
  page.spannedRow(
    columns.map(({ heading, align }) => styled(heading, HEADING[align])),
    spans,
  );
  for (const row of rows)
    page.spannedRow(
      columns.map(({ value, align }) => styled(value(row), BODY[align])),
      spans,
    );
}
