import { PACKAGE_NAMESPACES, RELATION_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { readXmlPart } from "./read-xml-part";
import { attribute } from "./xml-reader";

/** One tie from a part to another. */
export interface Relation {
  readonly id: string;
  /** The last word of its type (`worksheet`); "" for types of other makers. */
  readonly type: string;
  /** The name of the part; null where the target lies outside the file, which is never followed. */
  readonly part: string | null;
}

/** The relations of a part ("" for the package itself), in the order of the file. Source: ECMA-376 Part 2, 6.5. */
export async function relationsOf(parts: PackageParts, part: string): Promise<Relation[]> {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  const source = `${folder}_rels/${part.slice(folder.length)}.rels`;
  const relations: Relation[] = [];
  if (!parts.has(source)) return relations;
  await readXmlPart(parts, source, PACKAGE_NAMESPACES, {
    open: (name, _parent, tag) => {
      if (name !== "Relationship") return;
      const target = attribute(tag, "Target");
      const isInside = target !== null && attribute(tag, "TargetMode") !== "External";
      relations.push({
        id: attribute(tag, "Id") ?? "",
        type: typeWord(attribute(tag, "Type") ?? ""),
        part: isInside ? partNamed(target, folder, parts) : null,
      });
    },
  });
  return relations;
}

function typeWord(type: string): string {
  const namespace = RELATION_NAMESPACES.find((each) => type.startsWith(`${each}/`));
  return namespace === undefined ? "" : type.slice(namespace.length + 1);
}

/** `../tables/table1.xml` seen from `xl/worksheets/`, or `/xl/tables/table1.xml`; percent-encoded or not. */
function partNamed(target: string, folder: string, parts: PackageParts): string {
  const path = resolved(target.replace(/\\/g, "/"), folder);
  return parts.has(path) ? path : decoded(path);
}

function resolved(target: string, folder: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith("/") ? target : folder + target).split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "." && step !== "") steps.push(step);
  }
  return steps.join("/");
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
