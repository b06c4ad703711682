import { isDateFormat } from "../../../workbook/date-formats";
import type { Limits } from "./limits";
import { SHEET_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { readXmlPart } from "./read-xml-part";
import { refusePart } from "./unreadable";
import { attribute } from "./xml-reader";

/** For each cell style, 1 where it shows a number as a date. */
export async function dateStyles(parts: PackageParts, part: string | null, limits: Limits): Promise<Uint8Array> {
  if (part === null) return new Uint8Array(0);
  const codes = new Map<number, string>();
  const formatIds: number[] = [];
  await readXmlPart(parts, part, SHEET_NAMESPACES, {
    open: (name, parent, tag) => {
      const id = Number(attribute(tag, "numFmtId") ?? 0);
      if (name === "numFmt" && parent === "numFmts") codes.set(id, attribute(tag, "formatCode") ?? "");
      if (name === "xf" && parent === "cellXfs") formatIds.push(id);
      if (codes.size + formatIds.length > limits.marks) refusePart(part, "has more cell styles than are read");
    },
  });
  return Uint8Array.from(formatIds, (id) => Number(isDateFormat(id, codes.get(id) ?? null)));
}
