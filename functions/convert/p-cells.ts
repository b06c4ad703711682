import { benjaminiHochberg, holm } from "../../src/statistics/multiplicity";
import type { AnswerCell } from "../answer";
import { outOfRange } from "../failure";
import { columnOf, type InCell, isBlank } from "./cells";
import { eachRow } from "./each-row";
import { numberFrom } from "./values";

export const ADJUSTMENTS = ["holm", "bh"] as const;

/** The adjusted p values in the order given. A blank stays blank and counts for nothing; 0 is a p value. */
export function adjustedCells(argument: unknown, method: (typeof ADJUSTMENTS)[number]): AnswerCell[][] {
  const cells = columnOf(argument, "p");
  const given = eachRow(cells, (cell) => (isBlank(cell) ? null : pFrom(cell)));
  const values = given.filter((value) => value !== null);
  const adjusted = (method === "holm" ? holm : benjaminiHochberg)(values);
  let next = 0;
  return given.map((value) => [value === null ? null : (adjusted[next++] as number)]);
}

function pFrom(cell: InCell): number {
  const p = numberFrom(cell, "p");
  if (!(p >= 0 && p <= 1)) throw outOfRange("p lies between 0 and 1.");
  return p;
}
