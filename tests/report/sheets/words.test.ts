import { dayOf } from "../../../src/age/day";
import { dayInWords } from "../../../src/words/dates";
import { counted, listed, percentOf, plural } from "../../../src/words/numbers";
import { basisInWords, windowInWords } from "../../../src/report/sheets/skill-words";
import { SKILLS } from "./fixture";

test("a day in words is the same in every time zone", () => {
  expect(dayInWords(dayOf(2026, 9, 30))).toBe("September 30, 2026");
  expect(dayInWords(dayOf(2024, 2, 29))).toBe("February 29, 2024");
  expect(dayInWords(dayOf(2026, 1, 1))).toBe("January 1, 2026");
});

test("a percent never stands without its numbers", () => {
  expect(percentOf(53, 85)).toBe("62.4% (53 of 85)");
  expect(percentOf(1234, 9876)).toBe("12.5% (1,234 of 9,876)");
  expect([percentOf(3, 3), percentOf(19, 19), percentOf(19, 20)]).toEqual(["3 of 3", "19 of 19", "95.0% (19 of 20)"]);
  expect(percentOf(0, 0)).toBe("none (0 of 0)");
});

test("counts and lists as they are written", () => {
  expect(counted(1_234_567)).toBe("1,234,567");
  expect(plural(1, "child", "children")).toBe("1 child");
  expect(plural(2000, "child", "children")).toBe("2,000 children");
  expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listed)).toEqual(["", "a", "a and b", "a, b and c"]);
});

/** WHO: Acta Paediatr Suppl 2006;450:86-95, 1st to 99th percentile. CDC/AAP: Pediatrics 2022;149(3):e2021052138, 75% or more. */
test("a window says where it comes from, and one without an opening gets none", () => {
  expect(SKILLS.map(windowInWords)).toEqual(["8.2 to 17.6 months", "by 15.0 months", "6.0 to 9.0 months"]);
  expect(SKILLS.map(basisInWords)).toEqual([
    "WHO 2006, 1st to 99th percentile; 99 in 100 children by its close",
    "CDC/AAP 2022; 75 or more in 100 children by its close",
    "common practice, no source; its source gives no share",
  ]);
});
