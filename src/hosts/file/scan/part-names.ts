/** The parts that a workbook of values needs; each other one is refused, whatever it holds. Source: ECMA-376 Part 1, 12.3. */
const NEEDED: readonly RegExp[] = [
  /^\[content_types\]\.xml$/,
  /^_rels\/\.rels$/,
  /^docprops\/(core|app)\.xml$/,
  /^xl\/(workbook|styles|sharedstrings)\.xml$/,
  /^xl\/_rels\/workbook\.xml\.rels$/,
  /^xl\/theme\/theme1\.xml$/,
  /^xl\/worksheets\/sheet\d+\.xml$/,
];

/** In words, what a part would bring along. */
const KINDS: readonly (readonly [pattern: RegExp, what: string])[] = [
  [/externallink/, "a link to another workbook"],
  [/calcchain/, "a chain of formulas"],
  [/pivotcache|pivottable/, "a pivot table's cache of records"],
  [/customxml/, "custom data"],
  [/docprops\/custom/, "custom properties"],
  [/thumbnail/, "a picture of the workbook"],
  [/comments|persons|vmldrawing/, "comments"],
  [/vbaproject|macrosheets/, "macros"],
  [/connections|querytables/, "a connection to data"],
  [/printersettings/, "settings of a printer"],
  [/embeddings|activex|ctrlprops/, "an embedded object"],
  [/drawings|charts|media/, "a drawing, whose caches have values of their own"],
  [/worksheets\/_rels/, "ties of a sheet to other parts"],
  [/tables\/table/, "a table with names of its own"],
  [/revisions|users/, "a history of changes"],
];

/** What a part that does not belong holds; null for one that does. */
export function strangePart(name: string): string | null {
  if (NEEDED.some((pattern) => pattern.test(name))) return null;
  return KINDS.find(([pattern]) => pattern.test(name))?.[1] ?? "a part that a workbook of values does not need";
}
