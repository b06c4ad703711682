/**
 * The elements that a workbook of values is made of, by part. What is not listed is refused, so that a kind of content
 * nobody thought of cannot pass. Source: ECMA-376 Part 1, 18.2 and 18.3.
 */
export const WORKBOOK_ELEMENTS: ReadonlySet<string> = new Set([
  ..."workbook fileVersion workbookPr bookViews workbookView sheets sheet definedNames definedName calcPr".split(" "),
]);

export const SHEET_ELEMENTS: ReadonlySet<string> = new Set([
  ..."worksheet sheetPr pageSetUpPr dimension sheetViews sheetView pane selection sheetFormatPr cols col".split(" "),
  ..."sheetData row c v is t mergeCells mergeCell printOptions pageMargins pageSetup headerFooter".split(" "),
  ..."oddHeader oddFooter".split(" "),
]);

export const TEXT_ELEMENTS: ReadonlySet<string> = new Set(["sst", "si", "t"]);

/** In words, what an element would bring along. */
export const ELEMENTS_IN_WORDS: Readonly<Record<string, string>> = {
  f: "a formula",
  externalReferences: "a link to another workbook",
  externalReference: "a link to another workbook",
  hyperlinks: "a link",
  hyperlink: "a link",
  legacyDrawing: "a comment",
  drawing: "a drawing",
  tableParts: "a table with names of its own",
  fileSharing: "the name of a user",
  customWorkbookViews: "the view of a user",
  pivotCaches: "a pivot table's cache of records",
  oleObjects: "an embedded object",
  extLst: "an extension",
  rPh: "a reading aid of a text",
};
