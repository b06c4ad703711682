import { ReleaseRefused } from "./refused";
import { type ScanRules, scanText } from "./scan-texts";

/** Reads a CSV file field by field (RFC 4180) and refuses what it must not hold, formulas above all. */
export function scanCsv(name: string, text: string, rules: ScanRules): void {
  for (const field of fieldsOf(name, text.replace(/^\uFEFF/, ""))) {
    if (field === "" || /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(field)) continue;
    if (/^[=+\-@\t\r]/.test(field)) throw new ReleaseRefused(name, "a text that a spreadsheet takes for a formula");
    scanText(name, field, rules);
  }
}

function fieldsOf(name: string, text: string): string[] {
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/gy;
  const fields: string[] = [];
  while (field.lastIndex < text.length) {
    const match = field.exec(text);
    if (!match) throw new ReleaseRefused(name, "a row that is not CSV");
    fields.push((match[1]?.replaceAll('""', '"') ?? match[2] ?? "").trimEnd());
  }
  return fields;
}
