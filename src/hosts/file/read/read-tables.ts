import type { SaxesTagNS } from "saxes";
import type { TableIn } from "../../../workbook/workbook";
import { rangeOf } from "./address";
import { unescaped } from "./escapes";
import type { Limits } from "./limits";
import { SHEET_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { readXmlPart } from "./read-xml-part";
import { relationsOf } from "./relations";
import { refusePart } from "./unreadable";
import { attribute, OUTSIDE } from "./xml-reader";

/** The Excel tables of a sheet. */
export async function readTables(parts: PackageParts, sheetPart: string, limits: Limits): Promise<TableIn[]> {
  const tables: TableIn[] = [];
  for (const { type, part } of await relationsOf(parts, sheetPart)) {
    if (type !== "table" || part === null) continue;
    await readXmlPart(parts, part, SHEET_NAMESPACES, {
      open: (name, parent, tag) => {
        if (parent !== OUTSIDE) return;
        tables.push(name === "table" ? tableOf(part, tag, limits) : refusePart(part, "is not a table"));
      },
    });
  }
  return tables;
}

/** Source: ECMA-376 Part 1, 18.5.1.2 (one header row and no totals row unless it says otherwise). */
function tableOf(part: string, tag: SaxesTagNS, limits: Limits): TableIn {
  const range = rangeOf(attribute(tag, "ref") ?? "");
  if (range === null || range.bottom >= limits.rows || range.right >= limits.columns) {
    return refusePart(part, "describes a table without a proper range");
  }
  return {
    name: unescaped(attribute(tag, "displayName") ?? attribute(tag, "name") ?? ""),
    range,
    headerRow: attribute(tag, "headerRowCount") !== "0",
    totalsRow: (attribute(tag, "totalsRowCount") ?? "0") !== "0",
  };
}
