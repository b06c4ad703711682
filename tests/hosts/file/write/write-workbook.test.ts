import { strFromU8, unzipSync } from "fflate";
import ExcelJS from "exceljs";
import { dayOf } from "../../../../src/age/day";
import { altTextThatFits } from "../../../../src/hosts/file/write/alt-text";
import { writeWorkbook } from "../../../../src/hosts/file/write-workbook";
import type { SheetOut } from "../../../../src/workbook/sheets";

const created = dayOf(2026, 9, 30);

/** Invented children of the Alder Fork program. */
const children: SheetOut = {
  name: "Children",
  columns: [{ width: 10 }, { width: 12, format: "date" }, { width: 10, format: "count" }],
  rows: [
    ["Child", "Birth date", "Visits"],
    ["AF-001", dayOf(2025, 2, 28), 3],
    ["AF-002", dayOf(2024, 2, 29), 0],
  ],
  frozen: { rows: 1, columns: 1 },
  tables: [{ name: "Children", range: { top: 0, left: 0, bottom: 2, right: 2 } }],
};

test("exceljs reads the cells, the dates, the table and the frozen header", async () => {
  const sheet = (await opened([children])).getWorksheet("Children");
  expect(sheet?.getCell("A2").value).toBe("AF-001");
  expect(sheet?.getCell("B2").value).toEqual(new Date(Date.UTC(2025, 1, 28)));
  expect(sheet?.getCell("B3").value).toEqual(new Date(Date.UTC(2024, 1, 29)));
  expect(sheet?.getCell("C3").value).toBe(0);
  expect(sheet?.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 1 });
  const table = part([children], "xl/tables/table1.xml");
  expect(table).toContain('displayName="Children" ref="A1:C3"');
  expect(table).toContain('name="Birth date"');
});

test("two runs give the same bytes, dated by the day given", () => {
  const first = writeWorkbook([children], { created });
  expect(Buffer.from(writeWorkbook([children], { created })).equals(Buffer.from(first))).toBe(true);
  const core = strFromU8(unzipSync(first)["docProps/core.xml"] as Uint8Array);
  expect(core.match(/2026-09-30T00:00:00Z/g)).toHaveLength(2);
  expect(core).toContain("<dc:creator></dc:creator>");
});

test("the parts carry noon of the day given, in whatever time zone the test runs", () => {
  const bytes = Buffer.from(writeWorkbook([children], { created }));
  // PKWARE APPNOTE 6.3.10, 4.3.7 and 4.4.6: time at offset 10 of the local header, date at 12, in MS-DOS form.
  expect(bytes.readUInt32LE(0)).toBe(0x04034b50);
  expect(bytes.readUInt16LE(10)).toBe(12 << 11);
  expect(bytes.readUInt16LE(12)).toBe(((2026 - 1980) << 9) | (9 << 5) | 30);
});

/** Leading characters named by OWASP, "CSV Injection"; the rest is what XML 1.0 cannot hold. */
const hostile = ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", '=HYPERLINK("http://x")', "<&>\"'", "_x0041_", "  spaces  "];

test("hostile text stays text, to the letter", async () => {
  const sheets = [{ name: "T", columns: [], rows: hostile.map((text) => [text]) }];
  const sheet = (await opened(sheets)).getWorksheet("T");
  hostile.forEach((text, row) => {
    if (text !== "_x0041_") expect(sheet?.getCell(row + 1, 1).value).toBe(text);
    expect(sheet?.getCell(row + 1, 1).type).toBe(ExcelJS.ValueType.String);
  });
  // ECMA-376 Part 1, 22.4.2.4 (bstr): an underscore that would start an escape is itself escaped.
  expect(part(sheets, "xl/sharedStrings.xml")).toContain("_x005F_x0041_");
  expect(part(sheets, "xl/worksheets/sheet1.xml")).not.toMatch(/<f[ >]/);
});

test("characters that XML cannot hold are replaced, and long text is cut with a note", async () => {
  const rows = [["a\u0000b\u001Fc\uD800d\uFFFEe"], ["x".repeat(40_000)], ["😀".repeat(20_000)]];
  const sheet = (await opened([{ name: "T", columns: [], rows }])).getWorksheet("T");
  expect(sheet?.getCell("A1").value).toBe("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe");
  const long = String(sheet?.getCell("A2").value);
  expect(long).toHaveLength(32_767);
  expect(long.endsWith("[cut: too long for a cell]")).toBe(true);
  expect(() => encodeURIComponent(String(sheet?.getCell("A3").value))).not.toThrow();
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])("%p is refused", (value) => {
  expect(() => writeWorkbook([{ name: "T", columns: [], rows: [[1], [value]] }], { created })).toThrow(
    new RangeError("workbookBytes: A2 holds no finite number"),
  );
});

test("a table whose headings are blank or repeated is refused", () => {
  const range = { top: 0, left: 0, bottom: 1, right: 1 };
  for (const rows of [[["A", "a"]], [["A", ""]], [["A"]]]) {
    const sheet = { name: "T", columns: [], rows, tables: [{ name: "Tbl", range }] };
    expect(() => writeWorkbook([sheet], { created })).toThrow(RangeError);
  }
});

test("dates before 1900 are written as ISO text", async () => {
  const rows = [
    [{ value: dayOf(1899, 12, 31), format: "date" as const }],
    [{ value: dayOf(1900, 1, 1), format: "date" as const }],
  ];
  const sheet = (await opened([{ name: "T", columns: [], rows }])).getWorksheet("T");
  expect(sheet?.getCell("A1").value).toBe("1899-12-31");
  expect(part([{ name: "T", columns: [], rows }], "xl/worksheets/sheet1.xml")).toContain("<v>1</v>");
});

async function opened(sheets: readonly SheetOut[]): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(writeWorkbook(sheets, { created })) as unknown as ArrayBuffer);
  return workbook;
}

function part(sheets: readonly SheetOut[], path: string): string {
  return strFromU8(unzipSync(writeWorkbook(sheets, { created }))[path] as Uint8Array);
}

test("a chart's message longer than alternative text may be is cut between clauses and says where the rest stands", () => {
  const clause = "North 50.0% (5 of 10)";
  expect(altTextThatFits(clause)).toBe(clause);
  const long = Array.from({ length: 30 }, () => clause).join("; ");
  const fitting = altTextThatFits(long);
  // 255 characters: the limit that the documentation of rust_xlsxwriter names for Excel; from memory.
  expect(fitting.length).toBeLessThanOrEqual(255);
  expect(fitting).toMatch(/\(5 of 10\) … \(goes on in the cells below the numbers\)$/);
  expect(altTextThatFits("x".repeat(300)).length).toBeLessThanOrEqual(255);
});
