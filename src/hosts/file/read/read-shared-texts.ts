import { SHEET_NAMESPACES } from "./names";
import type { PackageParts } from "./package-parts";
import { ScannedPart } from "./scan/scanned-part";
import { SharedScanner } from "./scan/shared-scanner";
import { SharedTextsHandler } from "./text-list";
import type { Texts } from "./texts";
import { XmlReader } from "./xml-reader";

export async function readSharedTexts(parts: PackageParts, part: string, texts: Texts, scan: boolean): Promise<void> {
  const handler = new SharedTextsHandler(texts);
  const xml = new XmlReader(part, SHEET_NAMESPACES, handler, parts.limits.parsedBytes);
  const reader = scan ? new ScannedPart(xml, new SharedScanner(texts, handler)) : xml;
  await parts.read(part, (piece) => reader.write(piece));
  reader.end();
}
