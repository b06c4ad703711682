import { inExcel } from "./in-excel";
import * as functions from "../../functions";
import { scanInvented } from "../published/scan-invented";
import { answerOf, rowsOf } from "./call";

const { counts, population, maxWidth, top } = scanInvented;

describe("invented counts worked out in R", () => {
  const rows = rowsOf("SCAN", counts, population, maxWidth, 1999) as number[][];

  test("the 20 most likely windows, the first ten as R has them", () => {
    expect(rows).toHaveLength(20);
    rows.slice(0, 10).forEach((row, at) => {
      expect(row.slice(0, 4)).toEqual([3, top.first[at], top.last[at], top.observed[at]]);
      expect(row[4]).toBeCloseTo(top.expected[at]!, 10);
      expect(row[5]).toBeCloseTo(top.ratio[at]!, 8);
    });
    expect(rows[0]?.[6]).toBe(scanInvented.p);
  });

  test("left out, or empty cells as 0: half of the 12 periods, 999 replicates, the usual seed", () => {
    const usual = rowsOf("SCAN", counts, population);
    expect(rowsOf("SCAN", counts, population, 0, 0, 0)).toEqual(usual);
    expect(rowsOf("SCAN", counts, population, 6, 999, 20240229)).toEqual(usual);
    expect(usual[0]?.[6]).toBe(1 / 1000);
  });
});

describe("errors", () => {
  test.each([
    ["a blank count", [[[1, null]], [[1, 1]]], "#VALUE!", "Row 1: counts is empty"],
    ["half a count", [[[1.5, 1]], [[1, 1]]], "#VALUE!", "Row 1"],
    [
      "a count below 0",
      [
        [[1], [-1]],
        [[1], [1]],
      ],
      "#NUM!",
      "Row 2",
    ],
    [
      "a population below 0",
      [
        [[1], [1]],
        [[1], [-1]],
      ],
      "#NUM!",
      "Row 2",
    ],
    ["another shape", [[[1, 1]], [[1], [1]]], "#VALUE!", "different sizes"],
    ["a count without population", [[[1, 1]], [[1, 0]]], "#VALUE!", "column 2 has a count and no population"],
    ["nothing counted", [[[0, 0]], [[1, 1]]], "#N/A", "all 0"],
    ["nothing above expectation", [[[1, 1]], [[1, 1]]], "#N/A", "No window"],
    ["a width beyond the periods", [[[1, 2]], [[1, 1]], 3], "#NUM!", "from 1 to 2"],
    ["half a replicate", [[[1, 2]], [[1, 1]], 1, 0.5], "#VALUE!", "whole number"],
  ])("%s", (_, args, error, words) => {
    expect(answerOf("SCAN", ...args)).toMatchObject({ error, message: expect.stringContaining(words) });
  });

  test("in Excel the error is Excel's own", () => {
    inExcel(() => expect(() => functions.scan([[0]], [[1]])).toThrow("all 0"));
  });
});
