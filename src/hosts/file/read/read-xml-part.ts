import type { PackageParts } from "./package-parts";
import { type XmlHandler, XmlReader } from "./xml-reader";

/** Reads one part from end to end through the fallback parser. */
export async function readXmlPart(
  parts: PackageParts,
  part: string,
  namespaces: readonly string[],
  handler: XmlHandler,
): Promise<void> {
  const xml = new XmlReader(part, namespaces, handler, parts.limits.parsedBytes);
  await parts.read(part, (piece) => xml.write(piece));
  xml.end();
}
