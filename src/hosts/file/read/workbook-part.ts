import type { DateSystem } from "../../../age/serial";
import { unescaped } from "./escapes";
import { refuseBinary, refuseOtherZip } from "./file-kind";
import type { Limits } from "./limits";
import { RELATION_NAMESPACES, SHEET_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { readXmlPart } from "./read-xml-part";
import { type Relation, relationsOf } from "./relations";
import { printable, refuse, refusePart } from "./unreadable";
import { attribute, attributeNS, OUTSIDE } from "./xml-reader";

export interface SheetPart {
  readonly name: string;
  readonly part: string;
}

/** What the workbook part says: which parts hold what, in the order of the tabs. */
export interface WorkbookPart {
  readonly dateSystem: DateSystem;
  readonly sheets: readonly SheetPart[];
  readonly styles: string | null;
  readonly sharedTexts: string | null;
}

export async function workbookPart(parts: PackageParts, limits: Limits): Promise<WorkbookPart> {
  const part = (await relationsOf(parts, "")).find(({ type }) => type === "officeDocument")?.part ?? null;
  if (part === null || !parts.has(part)) return refuseOtherZip(parts.entries);
  if (part.toLowerCase().endsWith(".bin")) return refuseBinary();
  const { dateSystem, tabs } = await tabsOf(parts, part, limits);
  const relations = await relationsOf(parts, part);
  const partOf = (type: string): string | null => relations.find((each) => each.type === type)?.part ?? null;
  return {
    dateSystem,
    sheets: tabs.flatMap((tab) => sheetPart(tab, relations)),
    styles: partOf("styles"),
    sharedTexts: partOf("sharedStrings"),
  };
}

interface Tab {
  readonly name: string;
  readonly id: string | null;
}

async function tabsOf(
  parts: PackageParts,
  part: string,
  limits: Limits,
): Promise<{ dateSystem: DateSystem; tabs: Tab[] }> {
  let dateSystem: DateSystem = 1900;
  const tabs: Tab[] = [];
  await readXmlPart(parts, part, SHEET_NAMESPACES, {
    open: (name, parent, tag) => {
      if (parent === OUTSIDE && name !== "workbook") refuseOtherZip(parts.entries);
      if (name === "workbookPr" && /^(1|true)$/.test(attribute(tag, "date1904") ?? "")) dateSystem = 1904;
      if (name !== "sheet" || parent !== "sheets") return;
      tabs.push({ name: unescaped(attribute(tag, "name") ?? ""), id: attributeNS(tag, RELATION_NAMESPACES, "id") });
      if (tabs.length > limits.sheets) refusePart(part, `lists more than the ${limits.sheets} sheets that are read`);
    },
  });
  return { dateSystem, tabs };
}

/** Sheets that are all chart, dialog or macro hold no cells to read. */
function sheetPart({ name, id }: Tab, relations: readonly Relation[]): SheetPart[] {
  const relation = relations.find((each) => each.id === id);
  if (relation !== undefined && relation.type !== "worksheet") return [];
  const part = relation?.part ?? null;
  if (part !== null) return [{ name, part }];
  return refuse(
    `The workbook does not have its sheet "${printable(name)}": open the file in Excel and save it again as .xlsx.`,
  );
}
