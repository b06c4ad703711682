import fc from "fast-check";
import { nodeInflate } from "../../../../src/hosts/file/node-inflate";
import { crc32 } from "../../../../src/hosts/file/read/crc32";
import { fflateInflate, streamInflate } from "../../../../src/hosts/file/read/inflate";
import { readWorkbook } from "../../../../src/hosts/file/read-workbook";
import { bookBytes, cellsOf, refusal, sheet, usualParts } from "./book";
import { crcBitByBit, type Part, zipOf } from "./zip";

jest.setTimeout(60_000);

const SHEET = "xl/worksheets/sheet1.xml";
const five = sheet('<row r="1"><c r="A1"><v>5</v></c></row>');

/** The usual workbook with one 5, every part changed by `change`. */
function parts(change: (part: Part) => Partial<Part> = () => ({})): Part[] {
  const all: Part[] = Object.entries({ ...usualParts(), [SHEET]: five }).map(([name, text]) => ({ name, text }));
  return all.map((part) => ({ ...part, ...change(part) }));
}

const inSheet = (changed: Partial<Part>) => (part: Part) => (part.name === SHEET ? changed : {});

async function reads(bytes: Uint8Array): Promise<void> {
  for (const inflate of [nodeInflate, fflateInflate, streamInflate]) {
    const book = await readWorkbook(bytes, { inflate });
    expect(book.sheets.map(cellsOf)).toEqual([{ "0,0": 5 }]);
  }
}

test.each([
  ["deflated", zipOf(parts())],
  ["stored", zipOf(parts(() => ({ stored: true })))],
  ["with data descriptors", zipOf(parts(() => ({ descriptor: true })))],
  ["with zip64 fields", zipOf(parts(() => ({ zip64: true })))],
  // APPNOTE 4.4.1.2 lets the directory list parts in another order than they stand in.
  ["with a directory in another order", zipOf(parts(), { listedBackwards: true })],
  ["with a zip64 end", zipOf(parts(), { zip64: true })],
  [
    "with a comment that looks like an end",
    zipOf(parts(), { comment: "PK\x05\x06 and more text after it, PK\x05\x06" }),
  ],
  ["with backslashes and capitals", zipOf(parts(({ name }) => ({ name: name.replace(/\//g, "\\").toUpperCase() })))],
])("zip files %s are read, whatever inflates them", async (_, bytes) => reads(bytes));

test("a view into a larger buffer is read", async () => {
  const bytes = bookBytes({ [SHEET]: five });
  const larger = new Uint8Array(bytes.length + 20).fill(0x50);
  larger.set(bytes, 7);
  await reads(larger.subarray(7, 7 + bytes.length));
});

test("the checksum is that of its definition, whatever the pieces", () => {
  // The check value of CRC-32 over the digits 1 to 9: common practice, no source.
  expect(crc32(Buffer.from("123456789"), 0)).toBe(0xcbf43926);
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), fc.nat(60), (bytes, cut) => {
      expect(crc32(bytes.subarray(cut), crc32(bytes.subarray(0, cut), 0))).toBe(crcBitByBit(bytes));
    }),
  );
});

test.each<[string, (part: Part) => Partial<Part>, RegExp]>([
  ["a wrong checksum", inSheet({ crc: 1 }), /sheet1\.xml of the file is damaged/],
  ["a wrong checksum of a stored part", inSheet({ crc: 1, stored: true }), /damaged/],
  ["a size too small", inSheet({ size: 20 }), /damaged/],
  ["a size too large", inSheet({ size: 100_000 }), /damaged/],
  ["data that is not deflate", inSheet({ text: five, stored: true, method: 8 }), /damaged/],
  ["another method of compression", inSheet({ method: 12 }), /compressed in a way that is not read/],
  ["a password of the zip file", inSheet({ flags: 1 }), /password/],
  ["two parts of one name", (part) => (part.name === SHEET ? { name: "XL/styles.xml" } : {}), /two parts named/],
  ["a local name that differs", inSheet({ localName: "xl/worksheets/sheet2.xml" }), /contradicts itself/],
  ["a missing part", inSheet({ name: "xl/worksheets/other.xml" }), /is missing/],
])("%s is refused", async (_, change, message) => {
  for (const inflate of [nodeInflate, fflateInflate, streamInflate]) {
    expect(await refusal(zipOf(parts(change)), { inflate })).toMatch(message);
  }
});

test("parts that share bytes are refused", async () => {
  const bytes = Buffer.from(bookBytes({ [SHEET]: five, "xl/a.bin": "x".repeat(50), "xl/b.bin": "x".repeat(50) }));
  const second = bytes.lastIndexOf("xl/b.bin") - 46;
  expect(bytes.readUInt32LE(second)).toBe(0x02014b50);
  const first = bytes.lastIndexOf("xl/a.bin") - 46;
  bytes.writeUInt32LE(bytes.readUInt32LE(first + 20) + 20, first + 20);
  expect(await refusal(bytes)).toMatch(/cut short or damaged/);
});

test("a file cut anywhere is refused", async () => {
  const bytes = bookBytes({ [SHEET]: five });
  for (let length = 0; length < bytes.length; length += 7) await refusal(bytes.subarray(0, length));
});
