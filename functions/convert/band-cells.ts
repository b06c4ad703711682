import { metByBand } from "../../src/tables/met-by-band";
import type { TableContext } from "../../src/tables/context";
import type { AnswerCell } from "../answer";
import { notEstimable } from "../failure";
import { tableCells } from "./table-cells";

const ESTIMATED = ["shareMet", "lower", "upper"];

/** Table 1, its header row first. A share of nobody assessed is not estimable; rows over an area carry no interval. */
export function bandCells(context: TableContext): AnswerCell[][] {
  const table = metByBand(context);
  const estimated = ESTIMATED.map((key) => table.columns.findIndex((column) => column.key === key));
  const [share] = estimated as [number];
  const nobody = notEstimable("No child has an up-to-date check: there is no share.");
  return tableCells(table).map((row) =>
    row[share] === null ? row.map((cell, at) => (estimated.includes(at) ? nobody : cell)) : row,
  );
}
