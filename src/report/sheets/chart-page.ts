import type { Table } from "../../tables/table";
import type { ChartOut, ColumnOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import { chartDraft, chartLine, NumbersBehind, placeInGrid, printedArea, rowsOfGrid } from "./chart-grid";
import { footerOf, periodInWords } from "./page";
import { sentencesOf } from "./sentences/sentences";
import type { SheetDraft } from "./sheet-draft";
import { sheetNameOf } from "./sheet-plan";

export type ChartPlace = Pick<ChartOut, "at" | "widthPixels" | "heightPixels">;

/**
 * A sheet of charts of one table: what it says as sentences, how to read the charts, the charts. Not printed: the numbers
 * beside them, and below all of it each chart in words, since the alternative text of a file holds few of them.
 */
export class ChartPage {
  readonly numbers: NumbersBehind;
  private readonly draft: SheetDraft;
  private row: number;

  constructor(
    table: Table,
    private readonly report: Report,
    reading: string,
    numberColumns: readonly ColumnOut[],
  ) {
    const name = sheetNameOf(table.id);
    this.draft = chartDraft(`${name}, charts`, numberColumns);
    const [title = table.title, ...more] = sentencesOf(table, report);
    chartLine(this.draft, title, "title");
    chartLine(this.draft, `${table.population}. ${periodInWords(report)}. Numbers: the sheet ${name}.`, "subtitle");
    for (const sentence of more) chartLine(this.draft, sentence, "note");
    chartLine(this.draft, reading, "note");
    this.row = this.draft.rowCount;
    this.numbers = new NumbersBehind(this.row, "Numbers behind the charts");
  }

  /** Places for `count` charts, so many in a row, below what stands already. */
  places(count: number, perRow: number, heightPixels: number): ChartPlace[] {
    const top = this.row;
    this.row += rowsOfGrid(count, perRow, heightPixels);
    return Array.from({ length: count }, (_, index) => placeInGrid(index, perRow, top, heightPixels));
  }

  finished(charts: readonly ChartOut[]): SheetOut {
    const { draft, report, row } = this;
    draft.addRows(this.numbers.cells());
    draft.blank(Math.max(1, row + 2 - draft.rowCount));
    chartLine(draft, "The charts in words", "section");
    for (const { altText } of charts) chartLine(draft, altText, "note");
    return draft.finished(
      { landscape: true, fit: "one page", area: printedArea(row), footer: footerOf(report) },
      { charts },
    );
  }
}
