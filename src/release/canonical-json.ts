/**
 * One text for one value: keys in the order of their code units, no spaces. Two programs that agree on a value agree on
 * its text, and so on its hash. The same rules as RFC 8785 (JSON Canonicalization Scheme) for what a ledger holds: whole
 * numbers, texts, lists and records.
 *
 * @throws {RangeError} for a number that is not finite, and whatever JSON has no word for
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === "boolean" || typeof value === "string") return JSON.stringify(value);
  if (typeof value === "number" && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value !== "object") throw new RangeError("canonicalJson: a value that JSON has no word for");
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonicalJson(each)}`).join(",")}}`;
}
