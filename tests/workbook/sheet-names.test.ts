import fc from "fast-check";
import { safeSheetNames } from "../../src/workbook/sheet-names";

/** The rules are those of Microsoft Support, "Rename a worksheet". */
test("what Excel forbids is taken out", () => {
  expect(safeSheetNames(["a[b]c:d*e?f/g\\h", "'quoted'", "History", "  ", "x".repeat(40)])).toEqual([
    "a b c d e f g h",
    "quoted",
    "History sheet",
    "Sheet",
    "x".repeat(31),
  ]);
});

test("names that differ only in case are told apart", () => {
  expect(safeSheetNames(["Site", "SITE", "site", "x".repeat(31), "X".repeat(40)])).toEqual([
    "Site",
    "SITE (2)",
    "site (3)",
    "x".repeat(31),
    `${"X".repeat(27)} (2)`,
  ]);
});

test("any names come out safe, unique and stable", () => {
  fc.assert(
    fc.property(fc.array(fc.string({ unit: "binary", maxLength: 40 }), { maxLength: 12 }), (names) => {
      const safe = safeSheetNames(names);
      expect(new Set(safe.map((name) => name.toLowerCase())).size).toBe(names.length);
      for (const name of safe) {
        expect(name.length).toBeLessThanOrEqual(31);
        expect(name).not.toMatch(/^$|[[\]:*?/\\]|^'|'$/);
        expect(name.toLowerCase()).not.toBe("history");
      }
      expect(safeSheetNames(safe)).toEqual(safe);
    }),
  );
});
