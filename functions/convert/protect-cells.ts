import { gridSystem, type GridSystem } from "../../src/release/grid-system";
import { CannotProtect, hide } from "../../src/release/hide/hide";
import { knowledgeOf } from "../../src/release/knowledge";
import { provable } from "../../src/release/provable";
import { HIDDEN } from "../../src/release/release-table";
import type { AnswerCell } from "../answer";
import { invalid, notEstimable, outOfRange } from "../failure";
import { currentSolver } from "../solver";
import { type InCell, isBlank, isEmpty, rangeOf, singleOf } from "./cells";
import { eachRow } from "./each-row";
import { countFrom, numberFrom } from "./values";

const USUAL_MINIMUM = 11;
const LARGEST_MINIMUM = 1000;

/** The counts with their totals; hidden cells as the one symbol for hidden. */
export function protectCells(counts: unknown, minimum: unknown): AnswerCell[][] {
  const grid = countsFrom(counts);
  const least = minimumFrom(minimum);
  const system = gridSystem(grid, { minimum: least, loss: lossOf(grid), totals: "out" });
  const hidden =
    hiddenIn(system) ?? hiddenIn(gridSystem(grid, { minimum: least, loss: lossOf(grid), totals: "table" }));
  if (hidden === null) throw notEstimable("No pattern protects these counts.");
  return rowsOf(system, (cell) => (hidden[cell] ? HIDDEN : system.cells[cell]!.count));
}

/** Row, column, lowest and highest of every hidden cell. */
export function provableCells(counts: unknown, hidden: unknown): AnswerCell[][] {
  const grid = countsFrom(counts);
  const system = gridSystem(grid, { minimum: USUAL_MINIMUM, loss: () => 1, totals: "table" });
  const found = provable(system, knowledgeOf(system, maskFrom(hidden, system)), currentSolver());
  if (found.length === 0) throw notEstimable("hidden has no TRUE: nothing is hidden, and every count shows.");
  return found.map(({ cell, lowest, highest }) => [
    Math.floor(cell / (system.columns + 1)) + 1,
    (cell % (system.columns + 1)) + 1,
    lowest,
    highest,
  ]);
}

/** Fewest cells first, then the smallest sum of their counts. */
function lossOf(grid: readonly (readonly number[])[]): (count: number) => number {
  const all = grid.flat().reduce((sum, count) => sum + count, 0);
  return (count) => 4 * all + 1 + count;
}

function hiddenIn(system: GridSystem): Uint8Array | null {
  try {
    return hide(system, { solver: currentSolver() }).hidden;
  } catch (error) {
    if (error instanceof CannotProtect) return null;
    throw error;
  }
}

function countsFrom(counts: unknown): number[][] {
  return eachRow(rangeOf(counts, "counts"), (row) => row.map((cell) => countFrom(cell, "counts")));
}

/** 0 stands for an empty cell and gives the usual one. */
function minimumFrom(argument: unknown): number {
  const cell = singleOf(argument, "minimum");
  if (isEmpty(cell)) return USUAL_MINIMUM;
  const minimum = numberFrom(cell, "minimum");
  if (!Number.isInteger(minimum)) throw invalid("minimum is a whole number.");
  if (minimum < 2 || minimum > LARGEST_MINIMUM) throw outOfRange(`minimum goes from 2 to ${LARGEST_MINIMUM}.`);
  return minimum;
}

function maskFrom(hidden: unknown, { rows, columns, cells, at }: GridSystem): Uint8Array {
  const given = eachRow(rangeOf(hidden, "hidden"), (row) => row.map(isHidden));
  const [tall, wide] = [given.length, given[0]?.length ?? 0];
  const fits = (tall === rows && wide === columns) || (tall === rows + 1 && wide === columns + 1);
  if (!fits) {
    throw invalid(
      `hidden has ${tall} rows and ${wide} columns: give it ${rows} by ${columns} as counts, or ${rows + 1} by ${columns + 1} with the totals.`,
    );
  }
  const mask = new Uint8Array(cells.length);
  given.forEach((row, r) => row.forEach((is, c) => (mask[at(r, c)] = is ? 1 : 0)));
  return mask;
}

function isHidden(cell: InCell): boolean {
  if (isBlank(cell) || cell === 0 || cell === false) return false;
  if (cell === true || cell === 1) return true;
  const word = String(cell).trim().toUpperCase();
  if (word === "TRUE") return true;
  if (word === "FALSE") return false;
  throw invalid("hidden must be TRUE or FALSE in every cell.");
}

function rowsOf({ rows, columns, at }: GridSystem, shown: (cell: number) => AnswerCell): AnswerCell[][] {
  return Array.from({ length: rows + 1 }, (_, row) =>
    Array.from({ length: columns + 1 }, (_, column) => shown(at(row, column))),
  );
}
