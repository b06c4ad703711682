import { cells, firstSheet, MAIN, sheet, shared } from "./book";

jest.setTimeout(60_000);

/** Meanings: ECMA-376 Part 1, 18.3.1.4 (c), 18.3.1.96 (v), 18.18.11 (ST_CellType). */
test("numbers, shared texts, booleans, errors and formula results", async () => {
  const rows = `<row r="1"><c r="A1"><v>1.5</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="b"><v>1</v></c>
    <c r="D1" t="b"><v>0</v></c><c r="E1" t="e"><v>#N/A</v></c><c r="F1" t="str"><f>A1&amp;"x"</f><v>1.5x</v></c>
    <c r="G1"><f>A1*2</f><v>3</v></c><c r="H1" t="n"><v>-4E-2</v></c></row>`;
  expect(await cells(rows, { "xl/sharedStrings.xml": shared("<t>no</t>", "<t>yes</t>") })).toEqual({
    "0,0": 1.5,
    "0,1": "yes",
    "0,2": true,
    "0,3": false,
    "0,4": "error: #N/A",
    "0,5": "1.5x",
    "0,6": 3,
    "0,7": -0.04,
  });
});

test("a formula without a cached value says so; one whose result is the empty text is an empty cell", async () => {
  const rows = `<row r="1"><c r="A1"><f>B1</f></c><c r="B1"><f>C1</f><v></v></c><c r="C1"><f>D1</f><v/></c>
    <c r="D1" t="str"><f>E1</f><v></v></c><c r="E1" t="str"><f>F1</f></c><c r="F1" s="1"/><c r="G1" t="s"><f>H1</f></c></row>`;
  expect(await cells(rows)).toEqual({
    "0,0": "no cached value",
    "0,1": "no cached value",
    "0,2": "no cached value",
    "0,4": "no cached value",
    "0,6": "no cached value",
  });
});

test("shared formulas and array formulas keep their cached values", async () => {
  const rows = `<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">B1</f><v>7</v></c></row>
    <row r="2"><c r="A2"><f t="shared" si="0"/><v>8</v></c><c r="B2" cm="1"><f t="array" ref="B2">C2</f><v>9</v></c></row>`;
  expect(await cells(rows)).toEqual({ "0,0": 7, "1,0": 8, "1,1": 9 });
});

test("rich text is joined, phonetic readings are left out, spaces stay", async () => {
  const items = shared(
    '<r><rPr><b/></rPr><t>sits </t></r><r><t xml:space="preserve"> alone</t></r>',
    '<t>課きく</t><rPh sb="0" eb="1"><t>カ</t></rPh><phoneticPr fontId="1"/>',
    '<t xml:space="preserve">  two  </t>',
    "<t/>",
    "",
  );
  const rows = `<row r="1">${[0, 1, 2, 3, 4].map((index) => `<c t="s"><v>${index}</v></c>`).join("")}</row>`;
  expect(await cells(rows, { "xl/sharedStrings.xml": items })).toEqual({
    "0,0": "sits  alone",
    "0,1": "課きく",
    "0,2": "  two  ",
  });
});

test("inline texts, plain and rich, without the phonetic reading", async () => {
  const rows = `<row r="1"><c r="A1" t="inlineStr"><is><t>one</t></is></c><c r="B1" t="inlineStr"><is>
    <r><t>t</t></r><r><t>wo</t></r><rPh sb="0" eb="1"><t>x</t></rPh></is></c><c r="C1" t="inlineStr"><is><t></t></is></c></row>`;
  expect(await cells(rows)).toEqual({ "0,0": "one", "0,1": "two" });
});

/** ECMA-376 Part 1, 22.9.2.19 (ST_Xstring); references: XML 1.0, 4.1 and 4.6. */
test("escapes and references are decoded once", async () => {
  const rows = `<row r="1"><c r="A1" t="inlineStr"><is><t>a_x000D_b</t></is></c><c r="B1" t="str"><v>_x005F_x000D_</v></c>
    <c r="C1" t="inlineStr"><is><t>&lt;&amp;amp;&gt;&quot;&apos;&#65;&#x42;&#x1F476;</t></is></c>
    <c r="D1" t="inlineStr"><is><t>_x00e9_ _xZZZZ_ x_x41_</t></is></c></row>`;
  expect(await cells(rows)).toEqual({
    "0,0": "a\rb",
    "0,1": "_x000D_",
    "0,2": "<&amp;>\"'AB👶",
    "0,3": "é _xZZZZ_ x_x41_",
  });
});

test("CDATA, comments and line ends inside a cell", async () => {
  const rows = `<row r="1"><c r="A1" t="str"><v><![CDATA[a<b]]></v></c><c r="B1"><v>1<!-- two -->3</v></c>
    <c r="C1" t="str"><v>a\r\nb\rc</v></c></row>`;
  expect(await cells(rows)).toEqual({ "0,0": "a<b", "0,1": 13, "0,2": "a\nb\nc" });
});

/** Serial numbers: ECMA-376 Part 1, 18.17.4.1; 45292 is January 1, 2024 in the 1900 system. */
test("cells of ISO dates become serial numbers, and stay text where they are no date", async () => {
  const rows = `<row r="1"><c t="d"><v>2024-01-01</v></c><c t="d"><v>2024-01-01T12:00:00</v></c><c t="d"><v>2024-01-01T06:00:00Z</v></c>
    <c t="d"><v>1900-02-28</v></c><c t="d"><v>1900-03-01</v></c><c t="d"><v>2023-02-29</v></c><c t="d"><v>soon</v></c></row>`;
  expect(Object.values(await cells(rows))).toEqual([
    "date: 45292",
    "date: 45292.5",
    "date: 45292.25",
    "date: 59",
    "date: 61",
    "2023-02-29",
    "soon",
  ]);
});

test("rows and cells without addresses follow one another; out of order is put in order", async () => {
  expect(await cells("<row><c><v>1</v></c><c/><c><v>2</v></c></row><row/><row><c><v>3</v></c></row>")).toEqual({
    "0,0": 1,
    "0,2": 2,
    "2,0": 3,
  });
  expect(
    await cells('<row r="3"><c r="C3"><v>1</v></c><c r="A3"><v>2</v></c></row><row r="1"><c><v>3</v></c></row>'),
  ).toEqual({
    "0,0": 3,
    "2,0": 2,
    "2,2": 1,
  });
  expect(await cells('<row><c r="B5"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>')).toEqual({
    "4,1": 1,
    "4,2": 2,
    "5,0": 3,
  });
});

test("columns are letters to the base of 26", async () => {
  const rows = '<row r="1"><c r="Z1"><v>1</v></c><c r="AA1"><v>2</v></c><c r="XFD1"><v>3</v></c></row>';
  expect(await cells(rows)).toEqual({ "0,25": 1, "0,26": 2, "0,16383": 3 });
});

test("prefixed elements, other namespaces, single quotes and odd spacing", async () => {
  const xml = `<?xml version='1.0'?><x:worksheet xmlns:x='${MAIN}' xmlns:o='urn:other'><o:sheetData><o:row/></o:sheetData>
    <x:sheetData><x:row r='2'><x:c r='A2' o:t='s'><x:v>5</x:v><o:v>9</o:v></x:c></x:row></x:sheetData></x:worksheet>`;
  expect(await cells("", { "xl/worksheets/sheet1.xml": xml })).toEqual({ "1,0": 5 });
  expect(await cells("<row  r = '1' ><c r='A1'\n t='n' ><v >5</v ></c ></row >")).toEqual({ "0,0": 5 });
});

test("merged ranges and rows that only look filled", async () => {
  const { grid, merged } = await firstSheet({
    "xl/worksheets/sheet1.xml": sheet(
      '<row r="1"><c r="A1"><v>1</v></c></row><row r="9" ht="20"><c r="A9" s="1"/></row>',
      '<mergeCells count="2"><mergeCell ref="A1:B2"/><mergeCell ref="D4"/></mergeCells>',
    ),
  });
  expect(grid.rowCount).toBe(1);
  expect(merged).toEqual([
    { top: 0, left: 0, bottom: 1, right: 1 },
    { top: 3, left: 3, bottom: 3, right: 3 },
  ]);
});
