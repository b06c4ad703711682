import type { SaxesTagNS } from "saxes";
import { CELL } from "../../../workbook/cells";
import { type Inflate, usualInflate } from "../read/inflate";
import { USUAL_LIMITS } from "../read/limits";
import { PACKAGE_NAMESPACES, SHEET_NAMESPACES } from "../read/names";
import { PackageParts } from "../read/package-parts";
import { readXmlPart } from "../read/read-xml-part";
import { attribute, FOREIGN } from "../read/xml-reader";
import { readWorkbook } from "../read-workbook";
import { ELEMENTS_IN_WORDS, SHEET_ELEMENTS, TEXT_ELEMENTS, WORKBOOK_ELEMENTS } from "./allowed-elements";
import { strangePart } from "./part-names";
import { ReleaseRefused } from "./refused";
import { scanProperties } from "./scan-properties";
import { type ScanRules, scanText } from "./scan-texts";

/**
 * Opens the written bytes again, as whoever receives them would, and refuses what a workbook of values must not hold. It
 * believes nothing of how the file was made: what is allowed is listed, and everything else stops it.
 *
 * @throws {ReleaseRefused} with one sentence that names the part
 */
export async function scanWorkbook(
  bytes: Uint8Array,
  rules: ScanRules,
  inflate: Inflate = usualInflate,
): Promise<void> {
  refuseTail(bytes);
  const parts = new PackageParts(bytes, USUAL_LIMITS, inflate);
  for (const [key, { name }] of parts.entries) {
    const strange = strangePart(key);
    if (strange !== null) throw new ReleaseRefused(name, strange);
    if (key.endsWith(".rels")) await scanRelations(parts, name);
    if (key.startsWith("docprops/")) await scanProperties(parts, name, rules);
    if (key === "xl/workbook.xml") await scanElements(parts, name, WORKBOOK_ELEMENTS, rules, checkBookElement);
    if (key === "xl/sharedstrings.xml") await scanElements(parts, name, TEXT_ELEMENTS, rules);
    if (key.startsWith("xl/worksheets/")) await scanElements(parts, name, SHEET_ELEMENTS, rules, checkSheetElement);
  }
  await scanCells(bytes, rules, inflate);
}

const END_BYTES = 22;

/** A comment of the whole file, or bytes behind its end. */
function refuseTail(bytes: Uint8Array): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = bytes.length - END_BYTES;
  if (at < 0 || view.getUint32(at, true) !== 0x06054b50 || view.getUint16(at + 20, true) !== 0) {
    throw new ReleaseRefused("at the end of the file", "something behind the workbook");
  }
}

async function scanRelations(parts: PackageParts, part: string): Promise<void> {
  await readXmlPart(parts, part, PACKAGE_NAMESPACES, {
    open: (_name, _parent, tag) => {
      if (attribute(tag, "TargetMode") === "External") throw new ReleaseRefused(part, "a link to outside the file");
    },
  });
}

type CheckElement = (part: string, name: string, tag: SaxesTagNS) => void;

async function scanElements(
  parts: PackageParts,
  part: string,
  allowed: ReadonlySet<string>,
  rules: ScanRules,
  check: CheckElement = () => undefined,
): Promise<void> {
  let text = "";
  await readXmlPart(parts, part, SHEET_NAMESPACES, {
    open: (name, _parent, tag) => {
      if (name === FOREIGN || !allowed.has(name)) throw new ReleaseRefused(part, inWords(name, tag));
      check(part, name, tag);
      if (HOLDERS.has(name)) text = "";
    },
    text: (piece) => (text += piece),
    close: (name) => {
      if (HOLDERS.has(name)) scanText(part, text.trim(), rules);
    },
  });
}

/** Elements whose text is one text, in however many pieces it comes. */
const HOLDERS: ReadonlySet<string> = new Set(["si", "is", "definedName", "oddHeader", "oddFooter"]);

function inWords(name: string, { local }: SaxesTagNS): string {
  const known = Object.hasOwn(ELEMENTS_IN_WORDS, local) ? ELEMENTS_IN_WORDS[local] : undefined;
  return known ?? (name === FOREIGN ? "an element of another format" : "an element that no workbook of values needs");
}

const PRINT_NAMES: ReadonlySet<string> = new Set(["_xlnm.Print_Titles", "_xlnm.Print_Area"]);

function checkBookElement(part: string, name: string, tag: SaxesTagNS): void {
  if (name === "sheet" && (attribute(tag, "state") ?? "visible") !== "visible") {
    throw new ReleaseRefused(part, "a hidden sheet");
  }
  if (name === "definedName" && !PRINT_NAMES.has(attribute(tag, "name") ?? "")) {
    throw new ReleaseRefused(part, "a defined name");
  }
}

function checkSheetElement(part: string, name: string, tag: SaxesTagNS): void {
  if ((name === "row" || name === "col") && /^(1|true)$/.test(attribute(tag, "hidden") ?? "")) {
    throw new ReleaseRefused(part, `a hidden ${name === "row" ? "row" : "column"}`);
  }
}

/** The cells as they are read: names of sheets, texts, and numbers that show as dates. */
async function scanCells(bytes: Uint8Array, rules: ScanRules, inflate: Inflate): Promise<void> {
  const { sheets } = await readWorkbook(bytes, { inflate });
  for (const { name, grid, tables } of sheets) {
    scanText("xl/workbook.xml", name, rules);
    if (tables.length > 0) throw new ReleaseRefused(`sheet ${name}`, "a table with names of its own");
    for (const text of grid.strings) scanText(`sheet ${name}`, text, rules);
    if (grid.columns.some((column) => column?.kinds.includes(CELL.date))) {
      throw new ReleaseRefused(`sheet ${name}`, "a date finer than the quarter");
    }
  }
}
