import { strToU8, zipSync } from "fflate";
import { nodeInflate } from "../../../../src/hosts/file/node-inflate";
import { fflateInflate } from "../../../../src/hosts/file/read/inflate";
import { bookBytes, cells, MAIN, type Parts, refusal, relations, sheet, shared, usualParts, workbook } from "./book";

jest.setTimeout(60_000);

const SHEET = "xl/worksheets/sheet1.xml";

async function refusedBothWays(parts: Parts, message: RegExp): Promise<void> {
  const bytes = bookBytes(parts);
  for (const scan of [true, false]) expect(await refusal(bytes, { scan })).toMatch(message);
}

test.each<[string, Uint8Array, RegExp]>([
  ["an empty file", new Uint8Array(0), /^The file is empty/],
  ["text", strToU8("Child,Birth date\n1,2\n"), /not an Excel workbook/],
  ["an old workbook", compound("Workbook"), /\.xls\): open it in Excel and save it as \.xlsx/],
  ["a workbook with a password", compound("EncryptedPackage"), /protected by a password/],
  ["an OpenDocument file", zipSync({ mimetype: strToU8("x"), "content.xml": strToU8("<x/>") }), /OpenDocument/],
  ["another zip file", zipSync({ "a.txt": strToU8("x") }), /without an Excel workbook/],
  ["a text document", bookBytes({ "xl/workbook.xml": '<w:document xmlns:w="urn:w"/>' }), /without an Excel workbook/],
  ["a binary workbook", binary(), /\.xlsb/],
  ["the start of a zip file", new Uint8Array([0x50, 0x4b]), /cut short/],
])("%s is refused in its own words", async (_, bytes, message) => {
  expect(await refusal(bytes)).toMatch(message);
});

/** [MS-OFFCRYPTO] 2.3.4.4 names the stream; names in compound files are UTF-16 ([MS-CFB] 2.6.1). */
function compound(stream: string): Uint8Array {
  const start = Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  return new Uint8Array(
    Buffer.concat([start, Buffer.alloc(600, 0x45), Buffer.from(stream, "utf16le"), Buffer.alloc(64)]),
  );
}

function binary(): Uint8Array {
  return bookBytes({
    "_rels/.rels": relations([["r1", "officeDocument", "xl/workbook.bin"]]),
    "xl/workbook.xml": null,
    "xl/workbook.bin": "x",
  });
}

const doctypes = {
  entities: '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]>',
  "outside file": '<!DOCTYPE x SYSTEM "file:///etc/passwd">',
  "no content": "<!DOCTYPE x>",
};

test.each(Object.entries(doctypes))("a document type with %s is refused in any part", async (_, doctype) => {
  for (const [name, text] of Object.entries({
    ...usualParts(),
    "docProps/core.xml": "<x/>",
    "xl/drawings/a.vml": "<x/>",
  })) {
    const declared = `<?xml version="1.0"?><!-- c -->\n${doctype}${text.replace(/<\?.*?\?>/, "")}`;
    await refusedBothWays({ [name]: declared }, /document type \(DTD\)/);
    const wide = new Uint8Array(Buffer.from(`\uFEFF${declared}`, "utf16le"));
    await refusedBothWays({ [name]: wide }, /document type \(DTD\)/);
  }
});

test("references that XML does not define are refused", async () => {
  for (const reference of ["&nbsp;", "&constructor;", "&__proto__;", "&#0;", "&#xD800;", "&#x110000;", "&amp", "&"]) {
    await refusedBothWays({ [SHEET]: sheet(`<row><c t="str"><v>${reference}</v></c></row>`) }, /well-formed/);
    await refusedBothWays({ "xl/sharedStrings.xml": shared(`<t>${reference}</t>`) }, /well-formed/);
  }
});

test.each([
  ["a number that is none", '<row r="1"><c r="A1"><v>12,5</v></c></row>', /cell A1, should have a number/],
  ["hexadecimal", '<row r="1"><c r="A1"><v>0x10</v></c></row>', /should have a number/],
  ["no digit", '<row r="1"><c r="A1"><v>-.</v></c></row>', /should have a number/],
  ["beyond the largest number", '<row r="1"><c r="A1"><v>1e999</v></c></row>', /should have a number/],
  ["a truth value that is none", '<row r="1"><c r="B7" t="b"><v>2</v></c></row>', /contradicts its row/],
  ["two is no truth value", '<row r="7"><c r="B7" t="b"><v>2</v></c></row>', /cell B7, should have TRUE or FALSE/],
  ["an unknown type", '<row><c t="zip"><v>1</v></c></row>', /unknown kind/],
  ["a shared text that is not there", '<row><c t="s"><v>3</v></c></row>', /points to a text/],
  ["a negative shared text", '<row><c t="s"><v>-1</v></c></row>', /points to a text/],
  ["a cell given twice", '<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>1</v></c></row>', /gives cell A1 twice/],
  ["two values", "<row><c><v>1</v><v>2</v></c></row>", /has two values/],
  ["an address without a row", '<row><c r="A"><v>1</v></c></row>', /without a proper address/],
  ["row 0", '<row r="0"/>', /without a proper number/],
  ["a row beyond the last", '<row r="1048577"><c><v>1</v></c></row>', /1048576 rows/],
  ["a column beyond the last", '<row r="1"><c r="XFE1"><v>1</v></c></row>', /16384 columns/],
  ["a style that is no number", '<row><c s="x"><v>1</v></c></row>', /cell style/],
  ["an element left open", "<row><c><v>1</v></c>", /well-formed/],
  ["bytes after the cells", "</sheetData></worksheet><x>", /well-formed/],
  ["a control character", '<row><c t="str"><v>\u0001</v></c></row>', /well-formed/],
])("%s is refused", async (_, rows, message) => {
  await refusedBothWays({ [SHEET]: sheet(rows) }, message);
});

test("bytes that are no UTF-8 are refused", async () => {
  const bytes = strToU8(sheet('<row><c t="str"><v>@</v></c></row>'));
  bytes[bytes.indexOf(0x40)] = 0xff;
  await refusedBothWays({ [SHEET]: bytes }, /bytes that are not text/);
});

test("parts that contradict the workbook are refused", async () => {
  await refusedBothWays({ [SHEET]: `<table xmlns="${MAIN}"/>` }, /is not a worksheet/);
  await refusedBothWays({ [SHEET]: sheet("", "<mergeCells><mergeCell ref='B2:A1'/></mergeCells>") }, /merged range/);
  const lists = `<worksheet xmlns="${MAIN}"><sheetData/><sheetData></sheetData></worksheet>`;
  await refusedBothWays({ [SHEET]: lists }, /two lists/);
  await refusedBothWays({ "xl/_rels/workbook.xml.rels": relations([]) }, /does not have its sheet "Sheet1"/);
  const outside = relations([["r1", "worksheet", "http://example.org/sheet1.xml", "External"]]);
  await refusedBothWays({ "xl/_rels/workbook.xml.rels": outside }, /does not have its sheet/);
});

test("a message holds no text of a cell, and no control character of a name", async () => {
  const message = await refusal(bookBytes({ [SHEET]: sheet("<row><c><v>CANARY</v></c></row>") }));
  expect(message).not.toContain("CANARY");
  const named = workbook().replace("Sheet1", "_x001B_[31m".padEnd(400, "x"));
  const refused = await refusal(bookBytes({ "xl/workbook.xml": named, [SHEET]: sheet('<row r="0"/>') }));
  expect(refused).not.toContain("\u001b");
  expect(refused.length).toBeLessThan(300);
});

/** Deflate repeats at best 1,032 to 1, so that 1.5 MB of file may hold 1.5 GB (RFC 1951, 3.2.5: 258 bytes for 2 bits). */
test("a zip bomb is refused from its list of contents, and counted where that lies", async () => {
  const rows = strToU8(sheet("<row></row>".repeat(1_600_000)));
  const bomb = zipSync({ ...asBytes(usualParts()), [SHEET]: rows }, { level: 6 });
  expect(await refusal(bomb)).toMatch(/zip bomb/);
  const lying = Buffer.from(bomb);
  lying.writeUInt32LE(2_000_000, lying.lastIndexOf(SHEET) - 46 + 24);
  for (const inflate of [fflateInflate, nodeInflate]) {
    const before = process.memoryUsage().arrayBuffers;
    let given = 0;
    const counted: typeof inflate = (data, take) => inflate(data, (piece) => (take(piece), (given += piece.length)));
    expect(await refusal(lying, { inflate: counted })).toMatch(/damaged/);
    expect(given).toBeLessThan(25_000_000);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(80_000_000);
  }
});

function asBytes(parts: Record<string, string>): Record<string, Uint8Array> {
  return Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)]));
}

test("every limit has its sentence", async () => {
  const rows = Array.from({ length: 40 }, (_, row) => `<row r="${row + 1}"><c t="str"><v>t${row}</v></c></row>`).join(
    "",
  );
  const bytes = bookBytes({
    [SHEET]: sheet(rows, '<mergeCells><mergeCell ref="A1:B1"/><mergeCell ref="A2:B2"/></mergeCells>'),
  });
  expect(await refusal(bytes, { limits: { fileBytes: 100 } })).toMatch(/larger than/);
  expect(await refusal(bytes, { limits: { entries: 3 } })).toMatch(/parts, more than the 3/);
  expect(await refusal(bytes, { limits: { inflatedBytes: 1000 } })).toMatch(/inflates to more than/);
  expect(await refusal(bytes, { limits: { parsedBytes: 1000 }, scan: false })).toMatch(/unusual form/);
  expect(await refusal(bytes, { limits: { rows: 20 } })).toMatch(/more than the 20 rows/);
  expect(await refusal(bytes, { limits: { columns: 0 } })).toMatch(/more than the 0 columns/);
  expect(await refusal(bytes, { limits: { cells: 20 } })).toMatch(/too far apart/);
  expect(await refusal(bytes, { limits: { texts: 20 } })).toMatch(/more text than is read/);
  expect(await refusal(bytes, { limits: { textCharacters: 20 } })).toMatch(/more text than is read/);
  expect(await refusal(bytes, { limits: { sheets: 0 } })).toMatch(/more than the 0 sheets/);
  expect(await refusal(bytes, { limits: { marks: 1 } })).toMatch(/styles|merged ranges/);
});

test("a sparse sheet of declared giant size costs only what it holds, or is refused", async () => {
  const declared = sheet('<row r="1"><c r="A1"><v>1</v></c></row>').replace(
    "<sheetData>",
    '<dimension ref="A1:XFD1048576"/><sheetData>',
  );
  expect(await cells("", { [SHEET]: declared })).toEqual({ "0,0": 1 });
  const corners = Array.from(
    { length: 60 },
    (_, column) => `<c r="${column < 26 ? "" : "A"}${String.fromCharCode(65 + (column % 26))}1048576"><v>1</v></c>`,
  );
  await refusedBothWays({ [SHEET]: sheet(`<row r="1048576">${corners.slice(0, 52).join("")}</row>`) }, /too far apart/);
});

test("deep nesting, endless tags and endless texts are refused", async () => {
  const deep = "<x>".repeat(200) + "</x>".repeat(200);
  await refusedBothWays({ [SHEET]: sheet(deep) }, /nested deeper/);
  const endless = sheet(`<row><c t="str"><v>${"x".repeat(5_000_000)}</v></c></row>`);
  await refusedBothWays({ [SHEET]: endless }, /too long/);
  const attributes = Array.from({ length: 400_000 }, (_, index) => ` a${index}="1"`).join("");
  await refusedBothWays({ [SHEET]: sheet(`<row${attributes}/>`) }, /too long/);
});

test("many parts are refused before any is read", async () => {
  const many = Object.fromEntries(Array.from({ length: 10_001 }, (_, index) => [`xl/media/${index}`, "x"]));
  expect(await refusal(bookBytes(many))).toMatch(/parts, more than the 10000/);
});
