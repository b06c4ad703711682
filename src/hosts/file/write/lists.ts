import { a1Range, columnLetters } from "../../../workbook/cells";
import type { ListOut } from "../../../workbook/sheets";

/** Elements that come after the lists in a sheet part. Source: ECMA-376 Part 1, 18.3.1.99, the sequence of CT_Worksheet. */
const LATER =
  /<(?:hyperlinks|printOptions|pageMargins|pageSetup|headerFooter|rowBreaks|colBreaks|customProperties|cellWatches|ignoredErrors|smartTags|drawing|legacyDrawing|legacyDrawingHF|picture|oleObjects|controls|webPublishItems|tableParts|extLst)\b|<\/worksheet>/;
/** Excel's limit of a list that is written out. Source: Microsoft Support, "Excel specifications and limits"; from memory. */
const LONGEST_LIST = 255;

/** A sheet part with lists to choose from: the writing library has none of its own. */
export function withLists(xml: string, lists: readonly ListOut[]): string {
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
