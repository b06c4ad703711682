import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { nodeInflate } from "../../../../src/hosts/file/node-inflate";
import { readWorkbook } from "../../../../src/hosts/file/read-workbook";
import { writeWorkbook } from "../../../../src/hosts/file/write-workbook";
import type { WorkbookIn } from "../../../../src/workbook/workbook";
import { cellsOf, plain } from "./book";

jest.setTimeout(60_000);

test("scanner, fallback parser and exceljs agree on the sample with faults", async () => {
  const bytes = new Uint8Array(readFileSync("sample-workbooks/alder-fork-faults.xlsx"));
  const book = await readWorkbook(bytes, { inflate: nodeInflate });
  const parsed = await readWorkbook(bytes, { inflate: nodeInflate, scan: false });
  expect(JSON.stringify(plain(parsed)) === JSON.stringify(plain(book))).toBe(true);
  const kept = new ExcelJS.Workbook();
  await kept.xlsx.load(bytes.slice().buffer);
  expect(book.sheets.map((each) => each.name)).toEqual(kept.worksheets.map((each) => each.name));
  for (const [index, sheet] of kept.worksheets.entries()) {
    let filled = 0;
    sheet.eachRow((row) =>
      row.eachCell((cell) => (filled += Number(cell.value !== null && cell.value !== "" && !isCovered(cell)))),
    );
    expect(Object.keys(cellsOf(book.sheets[index] as WorkbookIn["sheets"][number]))).toHaveLength(filled);
  }
});

/** exceljs shows the value of a merged range in each of its cells. */
function isCovered(cell: ExcelJS.Cell): boolean {
  return cell.isMerged && cell.master !== cell;
}

test("what is written is read back to the letter", async () => {
  const rows = [
    ["Child", "Born", "Note", "Share"],
    ["AF-001", 20_454, "=1+1", 0.1],
    ["__proto__", -25_567, "_x0041_ <&> é 👶\n two", 1 / 3],
  ];
  const sheet = {
    name: "Children",
    columns: [{ width: 9 }, { width: 9, format: "date" as const }, { width: 9 }, { width: 9 }],
    rows,
    tables: [{ name: "Children", range: { top: 0, left: 0, bottom: 2, right: 3 } }],
    merged: [{ top: 4, left: 0, bottom: 4, right: 2 }],
  };
  const book = await readWorkbook(writeWorkbook([sheet], { created: 0 }));
  expect(plain(book)).toMatchObject({
    dateSystem: 1900,
    sheets: [
      {
        name: "Children",
        // 20,454 days after January 1, 1970 is January 1, 2026, serial 46,023 (ECMA-376 Part 1, 18.17.4.1).
        cells: {
          "1,0": "AF-001",
          "1,1": "date: 46023",
          "1,2": "=1+1",
          "1,3": 0.1,
          "2,0": "__proto__",
          "2,1": "date: 1",
          "2,2": rows[2]?.[2],
          "2,3": 1 / 3,
        },
        tables: [
          { name: "Children", headerRow: true, totalsRow: false, range: { top: 0, left: 0, bottom: 2, right: 3 } },
        ],
        merged: [{ top: 4, left: 0, bottom: 4, right: 2 }],
      },
    ],
  });
});
