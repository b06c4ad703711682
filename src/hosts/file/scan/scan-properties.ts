import type { PackageParts } from "../read/package-parts";
import { readXmlPart } from "../read/read-xml-part";
import { ReleaseRefused } from "./refused";
import { type ScanRules, scanText } from "./scan-texts";

const CORE = "http://schemas.openxmlformats.org/package/2006/metadata/core-properties";
const DUBLIN_CORE = "http://purl.org/dc/elements/1.1/";
const DUBLIN_TERMS = "http://purl.org/dc/terms/";
const EXTENDED = "http://schemas.openxmlformats.org/officeDocument/2006/extended-properties";
const VARIANTS = "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes";
const ALL = [CORE, DUBLIN_CORE, DUBLIN_TERMS, EXTENDED, VARIANTS];

/** What a property may say: the program that wrote the file, the day of the release, the names of the sheets. */
const MAY_SAY: Readonly<Record<string, (text: string, rules: ScanRules) => boolean>> = {
  created: isDayOfRelease,
  modified: isDayOfRelease,
  Application: (text) => text === "Windowline",
  AppVersion: (text) => /^[\d.]+$/.test(text),
  DocSecurity: (text) => text === "0",
  ScaleCrop: isNo,
  LinksUpToDate: isNo,
  SharedDoc: isNo,
  HyperlinksChanged: isNo,
  lpstr: () => true,
  i4: (text) => /^\d+$/.test(text),
};

/** @throws {ReleaseRefused} where the file names a person or a company, or a moment other than the day of the release */
export async function scanProperties(parts: PackageParts, part: string, rules: ScanRules): Promise<void> {
  await readXmlPart(parts, part, ALL, {
    open: () => undefined,
    text: (text, name) => {
      if (text.trim() === "") return;
      const allowed = Object.hasOwn(MAY_SAY, name) ? MAY_SAY[name] : undefined;
      if (!allowed?.(text, rules))
        throw new ReleaseRefused(part, "a property of its author or of the moment of writing");
      if (name === "lpstr") scanText(part, text, rules);
    },
  });
}

function isDayOfRelease(text: string, { asOf }: ScanRules): boolean {
  return text === `${asOf}T00:00:00Z`;
}

function isNo(text: string): boolean {
  return text === "false";
}
