/** Namespaces of the two forms of the format. Source: ECMA-376 Part 1 (strict) and Part 4 (transitional), annex A. */
export const SHEET_NAMESPACES: readonly string[] = [
  "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
  "http://purl.oclc.org/ooxml/spreadsheetml/main",
];

export const RELATION_NAMESPACES: readonly string[] = [
  "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
  "http://purl.oclc.org/ooxml/officeDocument/relationships",
];

/** Of the parts that tie a package together. Source: ECMA-376 Part 2, annex E. */
export const PACKAGE_NAMESPACES: readonly string[] = ["http://schemas.openxmlformats.org/package/2006/relationships"];
