import { strFromU8, unzipSync, zipSync } from "fflate";
import { inflateRawSync } from "node:zlib";
import { type Inflate, readWorkbook, UnreadableWorkbook } from "../../../../src/hosts/file/read-workbook";
import { bookBytes, MAIN, plain, relations, sheet, shared, workbook } from "./book";
import { zipOf } from "./zip";

/** What became of damaged workbooks; every other outcome throws. */
export interface Outcomes {
  cases: number;
  readBothWays: number;
  refusedBothWays: number;
  /** Read by the scanner where the fallback parser, stricter about what is not read anyway, refuses. */
  readByScannerAlone: number;
  slowestMs: number;
}

/** Numbers from 0 to below 1, the same for the same seed (the mulberry32 generator; public domain, from memory). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Damages workbooks, first in the bytes of the file, then inside a part, and reads each through both paths. */
export async function fuzz(cases: number, seed: number): Promise<Outcomes> {
  const random = chance(seed);
  const outcomes: Outcomes = { cases: 0, readBothWays: 0, refusedBothWays: 0, readByScannerAlone: 0, slowestMs: 0 };
  const books = sampleBooks();
  for (let index = 0; index < cases; index += 1) {
    const book = books[index % books.length] as Uint8Array;
    const damaged = random() < 0.25 ? mutated(book, random, FILE_BYTES) : damagedInside(book, random);
    await judge(damaged, outcomes, `seed ${seed}, case ${index}`);
  }
  return outcomes;
}

async function judge(bytes: Uint8Array, outcomes: Outcomes, which: string): Promise<void> {
  const started = performance.now();
  const scanned = await outcome(bytes, true, which);
  const parsed = await outcome(bytes, false, which);
  outcomes.slowestMs = Math.max(outcomes.slowestMs, performance.now() - started);
  outcomes.cases += 1;
  if (scanned === null && parsed === null) outcomes.refusedBothWays += 1;
  else if (parsed === null) outcomes.readByScannerAlone += 1;
  else if (scanned === parsed) outcomes.readBothWays += 1;
  else throw new Error(`${which}: the scanner and the fallback parser differ`);
}

/** The workbook as text; null where it is refused. */
async function outcome(bytes: Uint8Array, scan: boolean, which: string): Promise<string | null> {
  try {
    return JSON.stringify(plain(await readWorkbook(bytes, { scan, inflate: atOnce, limits: { cells: 4_000_000 } })));
  } catch (error) {
    if (error instanceof UnreadableWorkbook && /[.:]/.test(error.message)) return null;
    throw new Error(`${which}: ${String(error)}`, { cause: error });
  }
}

/** Small parts need no stream: many more cases in the same time. */
const atOnce: Inflate = async (deflated, take) => take(inflateRawSync(deflated, { maxOutputLength: 50_000_000 }));

function damagedInside(book: Uint8Array, random: () => number): Uint8Array {
  const parts = unzipSync(book);
  const names = Object.keys(parts).filter((name) => random() < 0.5 || name.includes("sheet"));
  const name = names[Math.floor(random() * names.length)] as string;
  const part = parts[name] as Uint8Array;
  const changed = random() < 0.6 ? altered(part, random) : mutated(part, random, XML_SNIPPETS);
  return zipOf(Object.entries({ ...parts, [name]: changed }).map(([each, text]) => ({ name: each, text })));
}

/** One or two changes that mostly leave well-formed XML: something put between two tags, a letter or digit for another. */
function altered(part: Uint8Array, random: () => number): Uint8Array {
  let text = strFromU8(part);
  for (let times = 1 + Math.floor(random() * 2); times > 0; times -= 1) {
    const start = Math.floor(random() * text.length);
    const boundary = text.indexOf("><", start) + 1;
    const put = WELL_FORMED[Math.floor(random() * WELL_FORMED.length)] as string;
    if (random() < 0.5) text = text.slice(0, boundary) + put + text.slice(boundary);
    else text = text.slice(0, start) + text.slice(start).replace(/[0-9A-Za-z](?=[^<>]*[<"])/, () => letter(random));
  }
  return Buffer.from(text);
}

function letter(random: () => number): string {
  const letters = "0123456789ABCEabnrstvx.- ";
  return letters[Math.floor(random() * letters.length)] as string;
}

/** One to three bytes or stretches flipped, cut out, doubled, or put in. */
function mutated(bytes: Uint8Array, random: () => number, snippets: readonly string[]): Uint8Array {
  let made = [...bytes];
  for (let times = 1 + Math.floor(random() * 3); times > 0; times -= 1) {
    const at = Math.floor(random() * made.length);
    const length = 1 + Math.floor(random() * random() * 40);
    const way = Math.floor(random() * 6);
    if (way === 0) made[at] = (made[at] as number) ^ (1 << Math.floor(random() * 8));
    else if (way === 1) made.splice(at, length);
    else if (way === 2) made.splice(at, 0, ...made.slice(at, at + length));
    else if (way === 3) made = made.slice(0, at);
    else if (way === 4) made[at] = Math.floor(random() * 256);
    else
      made.splice(
        at,
        random() < 0.5 ? 0 : length,
        ...Buffer.from(snippets[Math.floor(random() * snippets.length)] as string),
      );
  }
  return Uint8Array.from(made);
}

const FILE_BYTES = [
  "\x00",
  "\xff\xff\xff\xff",
  "PK\x05\x06",
  "PK\x01\x02",
  "PK\x03\x04",
  "PK\x06\x06",
  "\x01\x00\x18\x00",
];

const XML_SNIPPETS = [
  ...[
    "<c>",
    "</c>",
    "<c/>",
    '<c r="A1">',
    "<v>",
    "</v>",
    "<v/>",
    "<row>",
    "</row>",
    '<row r="2"/>',
    "<is>",
    "<t>",
    "</t>",
    "<f>",
    "</f>",
  ],
  ...[
    "<!-- x -->",
    "<!--",
    "<![CDATA[x]]>",
    "]]>",
    "<?p x?>",
    "&amp;",
    "&#65;",
    "&x;",
    "&",
    "<",
    ">",
    '"',
    "'",
    "/",
    "=",
    " ",
    "\r\n",
  ],
  ...[
    "</sheetData>",
    "<sheetData>",
    "<si>",
    "</si>",
    "<rPh><t>x</t></rPh>",
    "<x:v>",
    ' xmlns="urn:x"',
    ' xmlns:x="urn:x"',
    ' t="s"',
  ],
  ...[
    ' r="C3"',
    ' s="1"',
    ' t="str"',
    ' t="d"',
    "1e5",
    "-",
    ".",
    "00",
    "999999999999",
    "_x000D_",
    "\u0000",
    "\u00e9",
    "\uFFFF",
    "<!DOCTYPE x>",
  ],
];

const WELL_FORMED = [
  ...[
    "<c/>",
    "<c><v>1</v></c>",
    '<c r="F2"><v>1</v></c>',
    '<c t="s"><v>2</v></c>',
    '<c r="G9" t="str"><v>x</v></c>',
    "<v/>",
    "<v>7</v>",
  ],
  ...[
    "<row/>",
    '<row r="7"/>',
    '<row><c t="b"><v>0</v></c></row>',
    "<f/>",
    "<f>A1</f>",
    "<is><t>x</t></is>",
    "<t>y</t>",
    "<t/>",
    "<r><t>z</t></r>",
  ],
  ...[
    "<!-- x -->",
    "<![CDATA[ ]]>",
    "<?p x?>",
    " ",
    "\n",
    "<x/>",
    '<y xmlns="urn:y"><c/></y>',
    "<rPh><t>k</t></rPh>",
    "<si/>",
    "<si><t>s</t></si>",
  ],
  ...["<sheetData/>", '<mergeCell ref="C3:D9"/>', "&#32;", "<extLst><ext/></extLst>", "<phoneticPr/>"],
];

function sampleBooks(): Uint8Array[] {
  const rows = `<row r="1" spans="1:3"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" s="1"><v>45292.5</v></c></row>
    <row r="2"><c r="A2"><v>-1.25</v></c><c r="B2" t="b"><v>1</v></c><c r="C2" t="str"><f>A1&amp;"x"</f><v>Abx</v></c><c r="D2"><f>A2</f></c></row>
    <row r="4" ht="15"><c r="A4" t="inlineStr"><is><t xml:space="preserve"> a &lt; b </t></is></c><c r="B4" t="e"><v>#N/A</v></c><c s="1"/>
    <c r="E4" t="d"><v>2024-02-29</v></c></row>`;
  const merged = '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells><tableParts count="1"/>';
  const parts = {
    "xl/workbook.xml": workbook('<workbookPr date1904="true"/>'),
    "xl/sharedStrings.xml": shared("<t>Child</t>", "<r><t>Bi</t></r><r><t>rth</t></r>", "<t>é課</t>"),
    "xl/worksheets/sheet1.xml": sheet(rows, merged),
    "xl/worksheets/_rels/sheet1.xml.rels": relations([["r1", "table", "../tables/table1.xml"]]),
    "xl/tables/table1.xml": `<table xmlns="${MAIN}" displayName="Children" ref="A1:C4"/>`,
  };
  const prefixed = sheet(rows)
    .replace(/<(\/?)(?=[a-z])/g, "<$1x:")
    .replace("xmlns=", "xmlns:x=");
  const book = bookBytes(parts);
  const stored = zipSync(unzipSync(book), { level: 0 });
  return [book, book, stored, bookBytes({ ...parts, "xl/worksheets/sheet1.xml": prefixed })];
}

/** For a failing case: the parts of a file, to look at. */
export function partsAsText(bytes: Uint8Array): Record<string, string> {
  return Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));
}
