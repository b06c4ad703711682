import type { DefinitionCheckTable } from "../tables/definition-check/definition-check";
import type { Report } from "./report";

/**
 * REPORT.json: numbers to twelve significant digits (engines differ in the last digits of a logarithm), keys and rows in a fixed order, a row of a table on a line
 * of its own.
 */
export function reportJson({ tool, settings, input, findings, tables, provenance }: Report): string {
  return onLines({ tool, settings, input, findings, tables, provenance });
}

/** The same shape for one figure under every definition, which is no table of a report. */
export function definitionCheckJson(
  { tool, settings, input, provenance }: Pick<Report, "tool" | "settings" | "input" | "provenance">,
  table: DefinitionCheckTable,
): string {
  return onLines({ tool, settings, input, tables: [table], provenance });
}

/** FINDINGS.json of a check. */
export function findingsJson({ tool, input, findings }: Pick<Report, "tool" | "input" | "findings">): string {
  return onLines({ tool, input, findings });
}

/** Numbers that are not whole, to the digits that every engine agrees on. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Number.isInteger(value) ? value : Number(value.toPrecision(12));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

const LISTS_ON_LINES = new Set(["input", "findings", "rows", "columns", "notes"]);

function onLines(value: Readonly<Record<string, unknown>>): string {
  return `${text(rounded(value), "", "")}\n`;
}

function text(value: unknown, key: string, indent: string): string {
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0 || !(key === "tables" || LISTS_ON_LINES.has(key))) return JSON.stringify(value);
    const items = value.map((item) => inner + (key === "tables" ? text(item, "", inner) : JSON.stringify(item)));
    return `[\n${items.join(",\n")}\n${indent}]`;
  }
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  if (entries.length === 0) return "{}";
  const lines = entries.map(([name, each]) => `${inner}${JSON.stringify(name)}: ${text(each, name, inner)}`);
  return `{\n${lines.join(",\n")}\n${indent}}`;
}
