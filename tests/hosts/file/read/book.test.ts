import { isDateFormat } from "../../../../src/workbook/date-formats";
import {
  bookBytes,
  bothWays,
  cells,
  cellsOf,
  MAIN,
  OFFICE,
  plain,
  refusal,
  relations,
  sheet,
  shared,
  usualParts,
  workbook,
} from "./book";
import { readWorkbook } from "../../../../src/hosts/file/read-workbook";

jest.setTimeout(60_000);

const one = '<row r="1"><c r="A1" s="1"><v>1</v></c></row>';

test.each([
  ["", 1900],
  ['<workbookPr date1904="1"/>', 1904],
  ['<workbookPr date1904="true"/>', 1904],
  ['<workbookPr date1904="0"/>', 1900],
  ['<workbookPr date1904="false"/>', 1900],
])("date system of %s is %i", async (inside, system) => {
  expect((await bothWays({ "xl/workbook.xml": workbook(inside) })).dateSystem).toBe(system);
});

/** January 2, 1904 is day 1 of the 1904 system (ECMA-376 Part 1, 18.17.4.1). */
test("an ISO date counts in the date system of its workbook", async () => {
  const parts = { "xl/workbook.xml": workbook('<workbookPr date1904="1"/>') };
  expect(await cells('<row><c t="d"><v>1904-01-02</v></c></row>', parts)).toEqual({ "0,0": "date: 1" });
});

test("sheets come in the order of the tabs, hidden ones too, chart sheets not", async () => {
  const book = await bothWays({
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:rel="${OFFICE}"><sheets><sheet name="Zebra" rel:id="b"/><sheet name="Chart" rel:id="c"/>
      <sheet name="Apple &amp; __proto__" state="veryHidden" rel:id="a"/><sheet name="__proto__" state="hidden" rel:id="d"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relations([
      ["a", "worksheet", "/xl/worksheets/sheet1.xml"],
      ["b", "worksheet", "./worksheets/../worksheets/second.xml"],
      ["c", "chartsheet", "chartsheets/sheet1.xml"],
      ["d", "worksheet", "worksheets\\third.xml"],
    ]),
    "xl/worksheets/sheet1.xml": sheet("<row><c><v>1</v></c></row>"),
    "xl/worksheets/second.xml": sheet("<row><c><v>2</v></c></row>"),
    "xl/worksheets/third.xml": sheet('<row><c t="str"><v>__proto__</v></c></row>'),
  });
  expect(book.sheets.map(({ name }) => name)).toEqual(["Zebra", "Apple & __proto__", "__proto__"]);
  expect(book.sheets.map((each) => cellsOf(each)["0,0"])).toEqual([2, 1, "__proto__"]);
});

/** Strict namespaces: ECMA-376 Part 1, annex A. */
test("strict workbooks are read", async () => {
  const strict = (text: string): string =>
    text
      .replaceAll(MAIN, "http://purl.oclc.org/ooxml/spreadsheetml/main")
      .replaceAll(OFFICE, "http://purl.oclc.org/ooxml/officeDocument/relationships");
  const parts = {
    ...usualParts(),
    "xl/worksheets/sheet1.xml": sheet(`${one}<row><c t="s"><v>0</v></c></row>`),
    "xl/sharedStrings.xml": shared("<t>x</t>"),
  };
  const book = await bothWays(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strict(text)])));
  expect(plain(book)).toMatchObject({ sheets: [{ cells: { "0,0": "date: 1", "1,0": "x" } }] });
});

test("parts in UTF-16 and with a byte order mark are read", async () => {
  const text =
    '<?xml version="1.0" encoding="UTF-16"?>' + sheet('<row><c t="str"><v>é課👶</v></c></row>').replace(/<\?.*\?>/, "");
  const wide = Buffer.from(`\uFEFF${text}`, "utf16le");
  const marked = Buffer.from(`\uFEFF${text.replace("UTF-16", "UTF-8")}`, "utf8");
  for (const part of [wide, Buffer.from(wide).swap16(), Buffer.from(text, "utf16le"), marked]) {
    expect(await cells("", { "xl/worksheets/sheet1.xml": new Uint8Array(part) })).toEqual({ "0,0": "é課👶" });
  }
  const latin = text.replace("UTF-16", "ISO-8859-1");
  expect(await refusal(bookBytes({ "xl/worksheets/sheet1.xml": latin }))).toMatch(/encoding/);
});

test("tables with their header and totals rows", async () => {
  const table = (attributes: string): string =>
    `<table xmlns="${MAIN}" id="1" ${attributes}><autoFilter ref="A1:B3"/></table>`;
  const book = await bothWays({
    "xl/worksheets/_rels/sheet1.xml.rels": relations([
      ["r1", "table", "../tables/table1.xml"],
      ["r2", "table", "/xl/tables/table2.xml"],
      ["r3", "hyperlink", "http://example.org/", "External"],
    ]),
    "xl/tables/table1.xml": table('name="x" displayName="Children" ref="A1:C73" totalsRowCount="1"'),
    "xl/tables/table2.xml": table('displayName="Skills" ref="E2:F2" headerRowCount="0" totalsRowShown="0"'),
  });
  expect(book.sheets[0]?.tables).toEqual([
    { name: "Children", range: { top: 0, left: 0, bottom: 72, right: 2 }, headerRow: true, totalsRow: true },
    { name: "Skills", range: { top: 1, left: 4, bottom: 1, right: 5 }, headerRow: false, totalsRow: false },
  ]);
});

test("a style tells a date; a workbook without styles or shared texts is read all the same", async () => {
  expect(await cells(`${one}<row><c s="0"><v>2</v></c><c s="99"><v>3</v></c></row>`)).toEqual({
    "0,0": "date: 1",
    "1,0": 2,
    "1,1": 3,
  });
  const bare = {
    "xl/_rels/workbook.xml.rels": relations([["r1", "worksheet", "worksheets/sheet1.xml"]]),
    "xl/styles.xml": null,
    "xl/sharedStrings.xml": null,
  };
  expect(await cells(one, bare)).toEqual({ "0,0": 1 });
});

test("custom formats come from the styles part", async () => {
  const styles = `<styleSheet xmlns="${MAIN}"><numFmts><numFmt numFmtId="164" formatCode="dd\\.mm\\.yyyy"/><numFmt numFmtId="165" formatCode="0.0&quot; days&quot;"/></numFmts>
    <cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="164"/><xf numFmtId="165"/></cellXfs></styleSheet>`;
  expect(await cells('<row><c s="0"><v>1</v></c><c s="1"><v>2</v></c></row>', { "xl/styles.xml": styles })).toEqual({
    "0,0": "date: 1",
    "0,1": 2,
  });
});

/** ECMA-376 Part 1, 18.8.30 and 18.8.31. */
test.each([
  [14, null, true],
  [22, null, true],
  [45, null, true],
  [47, null, true],
  [27, null, true],
  [58, null, true],
  [0, null, false],
  [13, null, false],
  [23, null, false],
  [44, null, false],
  [48, null, false],
  [164, null, false],
  [164, "yyyy-mm-dd", true],
  [164, "d/m/yy;@", true],
  [164, "[$-409]mmm\\-yy", true],
  [164, "h:mm AM/PM", true],
  [164, "General", false],
  [164, "0.00", false],
  [164, "[Red]0", false],
  [164, '0 "days"', false],
  [164, "0\\d", false],
  [164, "0_d", false],
  [164, "*y0", false],
  [164, "[h]:mm:ss", false],
  [164, "[mm]:ss", false],
  [164, "[$USD] #,##0", false],
  [164, "# ?/?", false],
  [164, "@", false],
  [164, "0.00E+00", false],
  [164, 'yyyy"年"m"月"', true],
  [164, "", false],
])("format %i %s is a date: %s", (id, code, expected) => {
  expect(isDateFormat(id, code)).toBe(expected);
});

test("what the options leave out is what they are by default", async () => {
  const bytes = bookBytes({ "xl/worksheets/sheet1.xml": sheet(one) });
  expect(plain(await readWorkbook(bytes))).toEqual(plain(await readWorkbook(bytes, { limits: {} })));
});
