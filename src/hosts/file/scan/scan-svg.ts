import { SaxesParser } from "saxes";
import { ReleaseRefused } from "./refused";
import { type ScanRules, scanText } from "./scan-texts";

/** What a drawn picture is made of; no script, no style sheet, no picture in a picture, nothing foreign. */
const ELEMENTS: ReadonlySet<string> = new Set(
  "svg title desc defs pattern clipPath linearGradient stop g path rect line circle text tspan".split(" "),
);

/** @throws {ReleaseRefused} where a picture holds more than shapes and words, or reaches outside itself */
export function scanSvg(name: string, svg: string, rules: ScanRules): void {
  const parser = new SaxesParser({ xmlns: false, position: false });
  parser.on("error", () => {
    throw new ReleaseRefused(name, "what is not XML");
  });
  parser.on("doctype", () => {
    throw new ReleaseRefused(name, "a document type");
  });
  parser.on("opentag", ({ name: element, attributes }) => {
    if (!ELEMENTS.has(element)) throw new ReleaseRefused(name, `an element that no picture needs (${element})`);
    for (const [key, value] of Object.entries(attributes)) checkAttribute(name, key, value, rules);
  });
  parser.on("text", (text) => scanText(name, text.trim(), rules));
  parser.write(svg).close();
}

function checkAttribute(part: string, key: string, value: string, rules: ScanRules): void {
  const reaches = /^on|href$/i.test(key) || /url\(\s*["']?(?!#)/i.test(value) || /^\s*(javascript|data):/i.test(value);
  const isNamespace = key === "xmlns" || key.startsWith("xmlns:");
  if (reaches || (!isNamespace && /\/\//.test(value))) throw new ReleaseRefused(part, "a link to outside the file");
  if (key.startsWith("aria-")) scanText(part, value, rules);
}
