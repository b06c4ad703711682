import type { AnswerCell } from "../answer";
import { CellFailure, failureFrom, invalid } from "../failure";
import { type InCell, type InRange, rangeOf } from "./cells";

type Cells<Name extends string> = Readonly<Record<Name, InCell>>;

/**
 * One answer for each cell, as a sheet does it: a single cell stands beside every cell of a column, a column beside every
 * cell of a row. A bad cell gives its failure there alone; where it is the only one, the failure is the answer.
 */
export function spread<Name extends string>(
  args: Readonly<Record<Name, unknown>>,
  answer: (cells: Cells<Name>) => AnswerCell,
): AnswerCell[][] {
  const ranges = rangesOf(args);
  const rows = sizeOf(ranges, "rows", (range) => range.length);
  const columns = sizeOf(ranges, "columns", (range) => (range[0] as readonly InCell[]).length);
  const answers = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => failureInPlace(() => answer(cellsAt(ranges, row, column)))),
  );
  return failureOfOnly(answers);
}

/** The same for functions that answer with several cells: columns in, one row of `width` cells out for each of theirs. */
export function spreadRows<Name extends string>(
  args: Readonly<Record<Name, unknown>>,
  width: number,
  answer: (cells: Cells<Name>) => readonly AnswerCell[],
): AnswerCell[][] {
  const ranges = rangesOf(args);
  for (const [name, range] of ranges) {
    if ((range[0] as readonly InCell[]).length > 1) throw invalid(`${name}: give one column, not several.`);
  }
  const rows = sizeOf(ranges, "rows", (range) => range.length);
  const answers = Array.from({ length: rows }, (_, row) => {
    const found = failureInPlace(() => answer(cellsAt(ranges, row, 0)));
    return found instanceof CellFailure ? new Array<AnswerCell>(width).fill(found) : [...found];
  });
  return failureOfOnly(answers);
}

export function blankRow(width: number): AnswerCell[] {
  return new Array<AnswerCell>(width).fill(null);
}

function rangesOf<Name extends string>(args: Readonly<Record<Name, unknown>>): [Name, InRange][] {
  return (Object.keys(args) as Name[]).map((name) => [name, rangeOf(args[name], name)]);
}

function sizeOf(ranges: readonly [string, InRange][], kind: string, size: (range: InRange) => number): number {
  const several = ranges.find(([, range]) => size(range) > 1);
  if (!several) return 1;
  const other = ranges.find(([, range]) => size(range) > 1 && size(range) !== size(several[1]));
  if (!other) return size(several[1]);
  throw invalid(
    `${several[0]} has ${size(several[1])} ${kind} and ${other[0]} has ${size(other[1])}: give both the same, or one cell.`,
  );
}

function cellsAt<Name extends string>(ranges: readonly [Name, InRange][], row: number, column: number): Cells<Name> {
  const cells = {} as Record<Name, InCell>;
  for (const [name, range] of ranges) {
    const line = range[range.length === 1 ? 0 : row] as readonly InCell[];
    cells[name] = line[line.length === 1 ? 0 : column] as InCell;
  }
  return cells;
}

function failureInPlace<Answer>(answer: () => Answer): Answer | CellFailure {
  try {
    return answer();
  } catch (thrown) {
    return failureFrom(thrown);
  }
}

function failureOfOnly(answers: AnswerCell[][]): AnswerCell[][] {
  const only = answers.length === 1 ? (answers[0] as AnswerCell[]) : [];
  if (only[0] instanceof CellFailure && only.every((cell) => cell === only[0])) throw only[0];
  return answers;
}
