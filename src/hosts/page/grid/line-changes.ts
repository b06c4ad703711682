import type { CellRange } from "../../../workbook/workbook";

/** Rows or columns that someone put in or took out: `count` of them at `at`, below 0 where they went. */
export interface LineChange {
  readonly sheetId: string;
  readonly lines: "rows" | "columns";
  readonly at: number;
  readonly count: number;
}

const KINDS: Readonly<Record<string, { readonly lines: LineChange["lines"]; readonly sign: 1 | -1 }>> = {
  "sheet.mutation.insert-row": { lines: "rows", sign: 1 },
  "sheet.mutation.remove-rows": { lines: "rows", sign: -1 },
  "sheet.mutation.insert-col": { lines: "columns", sign: 1 },
  "sheet.mutation.remove-col": { lines: "columns", sign: -1 },
};

interface LineParameters {
  readonly subUnitId: string;
  readonly range: {
    readonly startRow: number;
    readonly endRow: number;
    readonly startColumn: number;
    readonly endColumn: number;
  };
}

/** The change behind a command of the grid; null where the command moves no cells. */
export function lineChangeOf(command: string, parameters: unknown): LineChange | null {
  const kind = KINDS[command];
  if (!kind) return null;
  const { subUnitId, range } = parameters as LineParameters;
  const [first, last] = kind.lines === "rows" ? [range.startRow, range.endRow] : [range.startColumn, range.endColumn];
  return { sheetId: subUnitId, lines: kind.lines, at: first, count: kind.sign * (last - first + 1) };
}

/** Where a range stands after the change; null where all of it went. */
export function rangeAfter(range: CellRange, change: LineChange): CellRange | null {
  const rows = change.lines === "rows";
  const ends = endsAfter(rows ? [range.top, range.bottom] : [range.left, range.right], change);
  if (!ends) return null;
  const [first, last] = ends;
  return rows ? { ...range, top: first, bottom: last } : { ...range, left: first, right: last };
}

function endsAfter([first, last]: readonly [number, number], { at, count }: LineChange): [number, number] | null {
  if (count > 0) return [at <= first ? first + count : first, at <= last ? last + count : last];
  const lastGone = at - count - 1;
  const before = (line: number) => Math.max(0, Math.min(line, lastGone + 1) - at);
  if (at <= first && last <= lastGone) return null;
  return [first - before(first), last - before(last + 1)];
}
