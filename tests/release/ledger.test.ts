import { createHash } from "node:crypto";
import fc from "fast-check";
import { canonicalJson } from "../../src/release/canonical-json";
import type { LedgerEntryBody } from "../../src/release/ledger-entry";
import { appendEntry, EMPTY_LEDGER, headOf, type Ledger, ledgerText, parseLedger } from "../../src/release/ledger";

const body = (asOf: string, shown: number | null): LedgerEntryBody => ({
  asOf,
  from: "2026-07-01",
  tables: ["met-by-band"],
  rule: { minimumCell: 11, method: "hide", base: null },
  definition: "recheck 90",
  cells: [
    { key: "north/met", place: "met at North", shown },
    { key: "south/met", place: "met at South", shown: null },
    { key: "all/met", place: "met in all", shown: 60 },
  ],
  equations: [
    {
      terms: [
        { cell: 0, coefficient: 1 },
        { cell: 1, coefficient: 1 },
        { cell: 2, coefficient: -1 },
      ],
      equals: 0,
    },
  ],
});

const first = body("2026-06-30", 41);
const second = body("2026-09-30", 44);
const two = appendEntry(appendEntry(EMPTY_LEDGER, first), second);

test("what is written is read again, and can be added to", () => {
  const read = ledgerOf(ledgerText(two));
  expect(read).toEqual(two);
  const three = appendEntry(read, body("2026-12-31", 45));
  expect(ledgerOf(ledgerText(three)).entries).toHaveLength(3);
  expect(ledgerText(three).startsWith(ledgerText(two).slice(0, ledgerText(two).lastIndexOf("\n]")))).toBe(true);
});

test("the same releases give the same bytes, and the same release is kept once", () => {
  expect(ledgerText(appendEntry(appendEntry(EMPTY_LEDGER, first), second))).toBe(ledgerText(two));
  expect(appendEntry(two, { ...second })).toBe(two);
});

/** FIPS 180-4 by another hand: Node's own SHA-256 over the text that METHOD.md, section 7 names. */
test("each hash covers the one before it and the body", () => {
  const sha = (text: string) => createHash("sha256").update(text, "utf8").digest("hex");
  const one = sha(`\n${canonicalJson(first)}`);
  expect(two.entries[0]?.hash).toBe(one);
  expect(headOf(two)).toBe(sha(`${one}\n${canonicalJson(second)}`));
  expect(headOf(EMPTY_LEDGER)).toBeNull();
});

/** RFC 8785, section 3.2.3: keys sorted by UTF-16 code units; its example of sorting. */
test("canonical text sorts keys by code unit, as in the example of RFC 8785", () => {
  const keys = ["\u20ac", "\r", "\ufb33", "1", "\ud83d\ude00", "\u0080", "\u00f6"];
  const sorted = ["\r", "1", "\u0080", "\u00f6", "\u20ac", "\ud83d\ude00", "\ufb33"];
  const text = canonicalJson(Object.fromEntries(keys.map((key) => [key, 1])));
  expect(Object.keys(JSON.parse(text) as object).filter((key) => key !== "1")).toEqual(
    sorted.filter((key) => key !== "1"),
  );
  expect(text).toBe(`{${sorted.map((key) => `${JSON.stringify(key)}:1`).join(",")}}`);
  expect(() => canonicalJson({ a: NaN })).toThrow(RangeError);
  expect(() => canonicalJson([undefined])).toThrow(RangeError);
});

describe("tampering", () => {
  const text = ledgerText(two);

  test.each([
    ["a shown count", '"shown":41', '"shown":42'],
    [
      "a hidden count made up",
      '"south/met","place":"met at South","shown":null',
      '"south/met","place":"met at South","shown":19',
    ],
    ["a count taken away", '"shown":44', '"shown":null'],
    ["a key", "north/met", "north/mex"],
    ["a place", "met in all", "met in alt"],
    ["a date", "2026-06-30", "2026-06-29"],
    ["a coefficient", '"coefficient":-1', '"coefficient":-2'],
    ["the right-hand side", '"equals":0', '"equals":1'],
    ["the rule", '"minimumCell":11', '"minimumCell":5'],
    ["the definition", "recheck 90", "recheck 60"],
    ["a table", '["met-by-band"]', '["trend"]'],
    ["a hash", two.entries[0]!.hash, "0".repeat(64)],
  ])("%s", (_, from, to) => {
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    expect(messageOf(changed)).toMatch(
      /does not verify from its release \d of 2 on.*take the latest copy.*nothing was written/,
    );
  });

  test("a release taken out, or two of them exchanged", () => {
    expect(messageOf(ledgerText({ entries: two.entries.slice(1) }))).toMatch(/release 1 of 1/);
    expect(messageOf(ledgerText({ entries: [...two.entries].reverse() }))).toMatch(/release 1 of 2/);
  });

  test("any change of any one character either changes nothing that is read, or is refused", () => {
    const replacement = fc.constantFrom("0", "7", "x", '"', "{", "]", ",", " ", "\u0000", "é");
    fc.assert(
      fc.property(fc.nat(text.length - 1), replacement, (at, other) => {
        const changed = text.slice(0, at) + other + text.slice(at + 1);
        const read = parseLedger(changed);
        if ("ledger" in read) expect(read.ledger).toEqual(two);
      }),
    );
  });
});

describe("a file that is no ledger of ours, or a hostile one", () => {
  const text = ledgerText(two);

  test.each([
    ["no JSON", "never", /cannot be read as JSON/],
    ["cut short", text.slice(0, -40), /cannot be read as JSON/],
    ["a list", "[]", /not one that Windowline wrote/],
    ["another program's", '{"tool": "Other", "entries": []}', /not one that Windowline wrote/],
    ["one of our reports", '{"tool": {"name": "Windowline"}}', /not one that Windowline wrote/],
    ["a later format", text.replace('"format": 1', '"format": 2'), /newer Windowline/],
    ["a number beyond all", text.replace('"shown":41', '"shown":1e999'), /In release 1 .*not a whole number/],
    ["a broken count", text.replace('"shown":41', '"shown":4.5'), /In release 1/],
    ["a day that no calendar has", text.replace("2026-06-30", "2026-06-31"), /In release 1/],
    ["a count below none", text.replace('"shown":44', '"shown":-1'), /In release 2/],
    ["a key too many", text.replace('"shown":41', '"shown":41,"count":3'), /In release 1/],
    ["__proto__ in a cell", text.replace('"shown":41', '"shown":41,"__proto__":{"shown":3}'), /In release 1/],
    ["__proto__ on top", text.replace('"tool"', '"__proto__":{"x":1},"tool"'), /In the release log/],
    ["a term beyond the cells", text.replace('"cell":2', '"cell":3'), /In release 1/],
    ["a key twice", text.replace("south/met", "north/met"), /In release 1/],
    ["a text without end", text.replace("recheck 90", "x".repeat(5000)), /In release 1/],
    ["nested beyond all", "[".repeat(200_000), /cannot be read as JSON/],
  ])("%s", (_, hostile, message) => {
    expect(messageOf(hostile)).toMatch(message);
    expect(messageOf(hostile)).toMatch(/nothing was written\.$/);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  test("a byte order mark is no change", () => {
    expect(ledgerOf(`\uFEFF${text}`)).toEqual(two);
  });

  test("what could not be read again is never appended", () => {
    const odd = { ...first, cells: [{ key: "a", place: "a", shown: NaN }], equations: [] };
    expect(() => appendEntry(EMPTY_LEDGER, odd)).toThrow(RangeError);
    expect(() => appendEntry(EMPTY_LEDGER, { ...first, cells: [] })).toThrow(RangeError);
  });
});

function ledgerOf(text: string): Ledger {
  const read = parseLedger(text);
  if ("message" in read) throw new Error(read.message);
  return read.ledger;
}

function messageOf(text: string): string {
  const read = parseLedger(text);
  return "message" in read ? read.message : "it was read";
}
