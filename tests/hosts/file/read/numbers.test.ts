import fc from "fast-check";
import { ENDING_ZEROS, STUCK } from "../../../../src/hosts/file/read/scan/bytes";
import { NumberScanner } from "../../../../src/hosts/file/read/scan/scan-number";

const scanner = new NumberScanner();

/** What the scanner makes of a text before `<`; null where it leaves it to the fallback parser. */
function scanned(text: string): number | null {
  const bytes = Buffer.concat([Buffer.from(`${text}<`), Buffer.alloc(ENDING_ZEROS)]);
  const at = scanner.read(bytes, 0);
  if (at === STUCK) return null;
  expect(at).toBe(text.length);
  return scanner.value;
}

/** `Number` rounds to the nearest double: ECMA-262, 7.1.4.1.1 (StringToNumber) and 6.1.6.1. */
test("every decimal is the double that Number gives", () => {
  const decimal = fc.stringMatching(/^-?([0-9]{1,18}\.?[0-9]{0,18}|\.[0-9]{1,18})$/);
  fc.assert(
    fc.property(decimal, (text) => expect(scanned(text)).toBe(Number(text))),
    { numRuns: 20_000 },
  );
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) =>
      expect(scanned(String(value))).toBe(Number(String(value))),
    ),
    { numRuns: 5_000 },
  );
});

test.each([
  ["999999999999999"],
  ["9007199254740993"],
  ["0.1"],
  ["0.000000000000001"],
  ["123456.789012345"],
  ["0.30000000000000004"],
  ["5."],
  [".5"],
  ["-0"],
  ["+7"],
  ["1E2"],
  ["1e-7"],
  ["2.2250738585072011e-308"],
  ["1.7976931348623157e308"],
  ["00012"],
])("%s", (text) => {
  expect(scanned(text)).toBe(Number(text));
});

test.each([
  [""],
  ["-"],
  ["."],
  ["-."],
  ["1e"],
  ["0x10"],
  ["Infinity"],
  ["NaN"],
  [" 1"],
  ["1 "],
  ["1,5"],
  ["1e999"],
  ["--1"],
  ["1_0"],
])("%p is left to the fallback parser", (text) => {
  expect(scanned(text)).toBeNull();
});
