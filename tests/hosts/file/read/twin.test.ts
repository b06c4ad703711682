import fc from "fast-check";
import { fflateInflate } from "../../../../src/hosts/file/read/inflate";
import { SheetCells } from "../../../../src/hosts/file/read/sheet-cells";
import { type Inflate, readWorkbook } from "../../../../src/hosts/file/read-workbook";
import { bookBytes, cellsOf, plain, sheet, shared } from "./book";
import { type GeneratedSheet, generatedSheet } from "./generated";

jest.setTimeout(60_000);

afterEach(() => jest.restoreAllMocks());

test("the scanner, the fallback parser and the meaning agree on generated sheets", async () => {
  await fc.assert(
    fc.asyncProperty(generatedSheet, fc.integer({ min: 1, max: 40 }), async (generated, pieceBytes) => {
      const bytes = bytesOf(generated);
      const scanned = await readWorkbook(bytes, { inflate: inPieces(pieceBytes) });
      expect(scanned.sheets.map(cellsOf)).toEqual([generated.expected]);
      expect(plain(await readWorkbook(bytes, { scan: false }))).toEqual(plain(scanned));
    }),
    { numRuns: 200 },
  );
});

test("the scanner itself reads what usual writers write", async () => {
  const parsed = jest.spyOn(SheetCells.prototype, "startCell");
  const rows = `<row r="1" spans="1:4" x14ac:dyDescent="0.25"><c r="A1" s="1" t="s"><v>0</v></c><c r="B1"><f>A1</f><v>2</v></c>
    <c r="C1" t="inlineStr"><is><t xml:space="preserve"> é &amp; </t></is></c><c r="D1" t="b"><v>1</v></c></row>`;
  const xml = sheet(rows).replace("<worksheet", '<worksheet xmlns:x14ac="urn:x"');
  const bytes = bookBytes({ "xl/worksheets/sheet1.xml": xml, "xl/sharedStrings.xml": shared("<t>a</t>") });
  const book = await readWorkbook(bytes);
  expect(book.sheets.map(cellsOf)).toEqual([{ "0,0": "a", "0,1": 2, "0,2": " é & ", "0,3": true }]);
  expect(parsed).not.toHaveBeenCalled();
  await readWorkbook(bytes, { scan: false });
  expect(parsed).toHaveBeenCalledTimes(4);
});

test("a file may be cut into pieces at any byte", async () => {
  const bytes = bytesOf({
    expected: {},
    rows: `<row r="1"><c r="Z1" s="1"><v>-1.25</v></c><c r="AA1" t="str"><v>é&amp;👶</v></c></row>`,
    sharedItems: ["<t>é課👶&lt;</t>", "<r><t>a</t></r>", "<t>b</t>"],
  });
  const whole = plain(await readWorkbook(bytes));
  for (let cut = 1; cut < 420; cut += 1)
    expect(plain(await readWorkbook(bytes, { inflate: cutAt(cut) }))).toEqual(whole);
  expect(plain(await readWorkbook(bytes, { inflate: inPieces(1) }))).toEqual(whole);
});

test("the fallback parser goes on where the scanner stops, in a row or between rows", async () => {
  const many = (from: number, to: number): string =>
    Array.from(
      { length: to - from },
      (_, i) => `<row r="${from + i}"><c r="A${from + i}"><v>${from + i}</v></c></row>`,
    ).join("");
  const odd = '<row r="5001"><c r="B5001"><v>1</v></c><!-- odd --><c><v>2</v></c><c r="A5001"><v>5001</v></c></row>';
  const between = "<!-- odd -->";
  for (const [middle, extra] of [
    [odd, { "5000,1": 1, "5000,2": 2 }],
    [between + many(5001, 5002), {}],
  ] as const) {
    const bytes = bookBytes({ "xl/worksheets/sheet1.xml": sheet(many(1, 5001) + middle + many(5002, 9001)) });
    const numbers = Object.fromEntries(Array.from({ length: 9000 }, (_, row) => [`${row},0`, row + 1]));
    for (const pieceBytes of [1000, 65_536]) {
      const book = await readWorkbook(bytes, { inflate: inPieces(pieceBytes) });
      expect(book.sheets.map(cellsOf)).toEqual([{ ...numbers, ...extra }]);
    }
  }
});

test("marks that only look like the list of cells do not start the scanner", async () => {
  const decoys = [
    '<!-- <sheetData><row r="1"><c r="A1"><v>9</v></c></row></sheetData> --><sheetData a=">"><![CDATA[<sheetData>]]>',
    '<sheetFormatPr b="x" a="<sheetData>"/>'.replace("<sheetData", "&lt;sheetData") + "<sheetData>",
    '<x:sheetData xmlns:x="urn:x"><row r="1"><c r="A1"><v>9</v></c></row></x:sheetData><sheetData>',
    '<sheetDataX><row r="1"><c r="A1"><v>9</v></c></row></sheetDataX><sheetData >',
    '<sheetData xmlns="urn:x"><row r="1"><c r="A1"><v>9</v></c></row></sheetData><sheetData>',
  ];
  for (const decoy of decoys) {
    const xml = sheet('<row r="1"><c r="A1"><v>5</v></c></row>').replace("<sheetData>", decoy);
    for (const scan of [true, false]) {
      const book = await readWorkbook(bookBytes({ "xl/worksheets/sheet1.xml": xml }), { scan });
      expect(book.sheets.map(cellsOf)).toEqual([{ "0,0": 5 }]);
    }
  }
});

function bytesOf({ rows, sharedItems }: GeneratedSheet): Uint8Array {
  return bookBytes({ "xl/worksheets/sheet1.xml": sheet(rows), "xl/sharedStrings.xml": shared(...sharedItems) });
}

function inPieces(bytes: number): Inflate {
  return (deflated, take) =>
    fflateInflate(deflated, (piece) => {
      for (let at = 0; at < piece.length; at += bytes) take(piece.slice(at, at + bytes));
    });
}

function cutAt(place: number): Inflate {
  return (deflated, take) =>
    fflateInflate(deflated, (piece) => {
      take(piece.subarray(0, place));
      take(piece.subarray(place));
    });
}
