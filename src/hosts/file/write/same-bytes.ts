import { a1Range, columnLetters } from "../../../workbook/cells";
import type { ChartOut, ListOut } from "../../../workbook/sheets";
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { calendarOf, type Day, isoOf } from "../../../age/day";
import { polishChart } from "./chart-xml";

const CORE = "docProps/core.xml";
const APPLICATION = "docProps/app.xml";
const WORKBOOK = "xl/workbook.xml";

/**
 * The file with every trace of the clock taken out: the writer stamps the moment of the run into its core properties,
 * which become the day given, as do the times of the parts. Parts keep their order.
 */
export function sameBytes(
  bytes: Uint8Array,
  created: Day,
  charts: readonly ChartOut[],
  lists: readonly (readonly ListOut[])[] = [],
): Uint8Array {
  const parts = unzipSync(bytes);
  const out: Zippable = {};
  for (const [path, part] of Object.entries(parts)) {
    const content = withListsOf(path, rewritten(path, part, created, charts), lists);
    out[path] = [content, { level: content.length > LARGE_PART_BYTES ? 1 : 6 }];
  }
  return zipSync(out, { mtime: zipTime(created), os: 0 });
}

/** Above this a part is packed quickly rather than tightly: rows repeat so much that little room is lost. */
const LARGE_PART_BYTES = 16_000_000;

/** Sheet parts are numbered in the order of the sheets. */
function withListsOf(path: string, part: Uint8Array, lists: readonly (readonly ListOut[])[]): Uint8Array {
  const sheet = /^xl\/worksheets\/sheet(\d+)\.xml$/.exec(path);
  const own = sheet ? (lists[Number(sheet[1]) - 1] ?? []) : [];
  return own.length > 0 ? strToU8(withLists(strFromU8(part), own)) : part;
}

function rewritten(path: string, part: Uint8Array, created: Day, charts: readonly ChartOut[]): Uint8Array {
  if (path === CORE) return strToU8(withDay(strFromU8(part), created));
  // The file says which program made it, so that a later run knows its own work and overwrites nothing else.
  if (path === APPLICATION) return strToU8(strFromU8(part).replace(/<Application>[^<]*/, "<Application>Windowline"));
  // The file holds no formula: without this, Excel offers to save a file that nobody changed.
  if (path === WORKBOOK) return strToU8(strFromU8(part).replace(' fullCalcOnLoad="1"', ""));
  const chart = /^xl\/charts\/chart(\d+)\.xml$/.exec(path);
  const drawn = chart && charts[Number(chart[1]) - 1];
  return drawn ? strToU8(polishChart(strFromU8(part), drawn)) : part;
}

function withDay(xml: string, created: Day): string {
  const stamp = `${isoOf(created)}T00:00:00Z`;
  const dated = xml.replace(/(<dcterms:(created|modified)[^>]*>)[^<]*/g, `$1${stamp}`);
  if (!dated.includes(stamp)) throw new Error("sameBytes: the writer's core properties have changed shape");
  return dated;
}

/** Zip keeps wall-clock time from 1980 to 2107; noon exists on every day in every time zone. */
function zipTime(created: Day): Date {
  const { year, month, dayOfMonth } = calendarOf(created);
  return new Date(Math.min(Math.max(year, 1980), 2107), month - 1, dayOfMonth, 12);
}

/** Elements that come after the lists in a sheet part. Source: ECMA-376 Part 1, 18.3.1.99, the sequence of CT_Worksheet. */
const LATER =
  /<(?:hyperlinks|printOptions|pageMargins|pageSetup|headerFooter|rowBreaks|colBreaks|customProperties|cellWatches|ignoredErrors|smartTags|drawing|legacyDrawing|legacyDrawingHF|picture|oleObjects|controls|webPublishItems|tableParts|extLst)\b|<\/worksheet>/;
/** Excel's limit of a list that is written out. Source: Microsoft Support, "Excel specifications and limits"; from memory. */
const LONGEST_LIST = 255;

/** A sheet part with lists to choose from: the writing library has none of its own. */
function withLists(xml: string, lists: readonly ListOut[]): string {
  const at = xml.search(LATER);
  if (at < 0) throw new Error("withLists: the writer's sheet parts have changed shape");
  const each = lists.map(listXml).join("");
  return `${xml.slice(0, at)}<dataValidations count="${lists.length}">${each}</dataValidations>${xml.slice(at)}`;
}

function listXml(list: ListOut): string {
  const { top, left, bottom, right } = list.range;
  // A value that is not on the list may still be typed: the reader says what it cannot use.
  return (
    `<dataValidation type="list" errorStyle="warning" allowBlank="1" showErrorMessage="1" sqref="${a1Range(top, left, bottom, right)}">` +
    `<formula1>${escaped(formulaOf(list))}</formula1></dataValidation>`
  );
}

function formulaOf({ values, from }: ListOut): string {
  if (from) {
    const { top, left, bottom, right } = from.range;
    const corner = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
    return `'${from.sheet.replaceAll("'", "''")}'!${corner(top, left)}:${corner(bottom, right)}`;
  }
  const text = (values ?? []).join(",");
  if (text.length > LONGEST_LIST || (values ?? []).some((each) => each.includes(",")))
    throw new RangeError("withLists: a list too long to be written out, or with a comma in a value");
  return `"${text.replaceAll('"', '""')}"`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
