import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { GridBuilder } from "../../../src/workbook/grid-builder";
import type { WorkbookIn } from "../../../src/workbook/workbook";
import { mountPane } from "../../../taskpane/mount";
import { asRead } from "../../sample/as-read";
import { MemoryHost } from "../../taskpane/memory-host";

declare global {
  interface Window {
    host: MemoryHost;
  }
}

/** The pane over a workbook in memory: `?book=sample`, `faults` or `large`. */
const book = new URLSearchParams(location.search).get("book") ?? "sample";
window.host = new MemoryHost(workbookOf(book));
const root = document.getElementById("pane") as HTMLElement;
root.replaceChildren();
mountPane(root, window.host);

function workbookOf(name: string): WorkbookIn {
  if (name === "large") return repeated(asRead(sampleSheets(makeSample({ children: 240, seed: 7 }))), 500_000);
  return asRead(
    sampleSheets(makeSample({ children: name === "faults" ? 60 : 240, seed: 7, defects: name === "faults" })),
  );
}

/** The same children with as many rows of observations as asked for: the looks again, each time a day later. */
function repeated(workbook: WorkbookIn, rows: number): WorkbookIn {
  return {
    ...workbook,
    sheets: workbook.sheets.map((sheet) => {
      if (sheet.name !== "Observations") return sheet;
      const { grid } = sheet;
      const [table] = sheet.tables;
      const builder = new GridBuilder();
      const looks = grid.rowCount - 1;
      for (let row = 0; row <= rows; row += 1) {
        const from = row === 0 ? 0 : 1 + ((row - 1) % looks);
        grid.columns.forEach((column, at) => {
          const kind = column?.kinds[from] ?? 0;
          const value = column?.values[from] ?? 0;
          if (kind === 3) builder.text(row, at, grid.strings[value] ?? "");
          else if (kind !== 0)
            builder.number(row, at, kind === 2 ? value - Math.floor((row - 1) / looks) : value, kind as 1);
        });
      }
      const tables = table ? [{ ...table, range: { ...table.range, bottom: rows } }] : [];
      return { ...sheet, grid: builder.build(), tables };
    }),
  };
}
