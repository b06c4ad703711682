import fc from "fast-check";
import type { TextFinding } from "../../src/release/text-check/check-text";
import { stretchesOf } from "../../taskpane/views/release/marked-text";

type Kind = TextFinding["kind"];

function found(kind: Kind, start: number, end: number): TextFinding {
  return { kind, start, end, rule: "fine date", sentence: 1, written: "", message: "" };
}

const marked = (text: string, findings: readonly TextFinding[]) =>
  stretchesOf(text, findings).map(({ written, index, kind }) => [written, index, kind]);

test("a text is cut where a finding begins and ends", () => {
  expect(marked("In May 7 of 40 met it.", [found("leak", 7, 8), found("agrees", 12, 14)])).toEqual([
    ["In May ", -1, null],
    ["7", 0, "leak"],
    [" of ", -1, null],
    ["40", 1, "agrees"],
    [" met it.", -1, null],
  ]);
});

test("where two overlap, the first keeps its whole stretch", () => {
  expect(marked("born May 3, 2025", [found("leak", 5, 16), found("mend", 9, 10)])).toEqual([
    ["born ", -1, null],
    ["May 3, 2025", 0, "leak"],
  ]);
});

test("a finding on the text as a whole marks nothing", () => {
  expect(marked("No period.", [found("mend", 0, 0)])).toEqual([["No period.", -1, null]]);
});

test("put together again it is the text, letter for letter", () => {
  const stretch = fc.tuple(fc.nat(40), fc.nat(12));
  const kind = fc.constantFrom<Kind>("leak", "mend", "advice", "agrees");
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 40 }), fc.array(fc.tuple(kind, stretch)), (text, given) => {
      const findings = given.map(([each, [start, length]]) =>
        found(each, Math.min(start, text.length), Math.min(start + length, text.length)),
      );
      const stretches = stretchesOf(text, findings);
      expect(stretches.map(({ written }) => written).join("")).toBe(text);
      for (const { start, written } of stretches) expect(text.slice(start, start + written.length)).toBe(written);
    }),
  );
});
