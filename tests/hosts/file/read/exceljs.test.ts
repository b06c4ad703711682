import ExcelJS from "exceljs";
import fc from "fast-check";
import { readWorkbook } from "../../../../src/hosts/file/read-workbook";
import { cellsOf } from "./book";

jest.setTimeout(60_000);

/** Texts without the escape that exceljs does not undo (ECMA-376 Part 1, 22.9.2.19). */
const text = fc.string({ maxLength: 12 }).filter((each) => each !== "" && !each.includes("_x"));

const value = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((each) => each + 0),
  fc.integer(),
  text,
  fc.boolean(),
  fc.integer({ min: 20_000, max: 60_000 }).map((day) => new Date((day - 25_569) * 86_400_000)),
  fc.constantFrom("#N/A", "#REF!").map((error) => ({ error }) as ExcelJS.CellErrorValue),
  fc
    .tuple(text, text)
    .map(([first, second]) => ({ richText: [{ text: first }, { text: second, font: { bold: true } }] })),
  fc.integer().map((result) => ({ formula: "A1+1", result })),
  text.map((result) => ({ formula: "A1&B1", result })),
  fc.constant(null),
);

test("workbooks written and read by exceljs are read alike", async () => {
  const rows = fc.array(fc.array(value, { maxLength: 5 }), { maxLength: 6 });
  await fc.assert(
    fc.asyncProperty(rows, fc.boolean(), async (values, date1904) => {
      const written = new ExcelJS.Workbook();
      written.properties.date1904 = date1904;
      written.addWorksheet("One");
      written.addWorksheet("Hidden", { state: "hidden" }).addRows(values);
      const bytes = new Uint8Array(await written.xlsx.writeBuffer());
      const kept = new ExcelJS.Workbook();
      await kept.xlsx.load(bytes.slice().buffer);
      const book = await readWorkbook(bytes);
      expect(book.dateSystem).toBe(date1904 ? 1904 : 1900);
      expect(book.sheets.map(({ name }) => name)).toEqual(["One", "Hidden"]);
      expect(cellsOf(book.sheets[1] as never)).toEqual(
        cellsOfKept(kept.getWorksheet("Hidden") as ExcelJS.Worksheet, date1904),
      );
    }),
    { numRuns: 60 },
  );
});

test("tables, merged ranges and formulas without a result, as exceljs writes them", async () => {
  const written = new ExcelJS.Workbook();
  const sheet = written.addWorksheet("Sheet");
  sheet.addTable({
    name: "Children",
    ref: "B2",
    headerRow: true,
    totalsRow: true,
    columns: [{ name: "Child" }, { name: "Site" }],
    rows: [["AF-1", "North"]],
  });
  sheet.mergeCells("D1:E3");
  sheet.getCell("G1").value = { formula: "1+1" } as ExcelJS.CellFormulaValue;
  const book = await readWorkbook(new Uint8Array(await written.xlsx.writeBuffer()));
  expect(book.sheets[0]?.tables).toEqual([
    { name: "Children", range: { top: 1, left: 1, bottom: 3, right: 2 }, headerRow: true, totalsRow: true },
  ]);
  expect(book.sheets[0]?.merged).toEqual([{ top: 0, left: 3, bottom: 2, right: 4 }]);
  expect(cellsOf(book.sheets[0] as never)).toMatchObject({ "1,1": "Child", "2,2": "North", "0,6": "no cached value" });
});

function cellsOfKept(sheet: ExcelJS.Worksheet, date1904: boolean): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  sheet.eachRow((row, rowNumber) =>
    row.eachCell((cell, column) => {
      const shown = shownKept(cell.result ?? cell.value, date1904);
      if (shown !== null && shown !== "") found[`${rowNumber - 1},${column - 1}`] = shown;
    }),
  );
  return found;
}

function shownKept(value: unknown, date1904: boolean): unknown {
  if (value instanceof Date) return `date: ${value.getTime() / 86_400_000 + 25_569 - (date1904 ? 1462 : 0)}`;
  if (typeof value !== "object" || value === null) return value;
  if ("error" in value) return `error: ${String(value.error)}`;
  return (value as ExcelJS.CellRichTextValue).richText.map((run) => run.text).join("");
}
