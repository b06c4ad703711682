import { textRows } from "../../../src/release/text-check/rows";
import type { ReleasedTable } from "../../../src/release/release-table";

test("numbers of an area are those of skill checks, and numbers of a skill those of children", () => {
  const columns = ["skill", "area", "met"].map((key) => ({
    key,
    label: key,
    unit: key === "met" ? "children" : "text",
  }));
  const rows = [
    ["all", "speech", 194],
    ["first-words", "speech", 61],
  ];
  const table = { id: "met-by-band", title: "", population: "", notes: [], rows, columns } as ReleasedTable;
  const counted = textRows([table], [], []).map(({ shown }) => shown.map(({ value, counts }) => [value, counts]));
  expect(counted).toEqual([[[194, "skill checks"]], [[61, "children"]]]);
});
