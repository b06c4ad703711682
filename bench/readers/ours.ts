import { readFileSync } from "node:fs";
import { nodeInflate } from "../../src/hosts/file/node-inflate";
import { readWorkbook } from "../../src/hosts/file/read-workbook";
import { numberAt, stringAt } from "../../src/workbook/cells";
import { DATE_COLUMN, type Found } from "./found";

export async function readWithOurs(file: string): Promise<Found> {
  const { sheets } = await readWorkbook(readFileSync(file), { inflate: nodeInflate });
  const { grid } = sheets[0]!;
  let dates = 0;
  for (let row = 1; row < grid.rowCount; row += 1) dates += numberAt(grid, row, DATE_COLUMN);
  return { rows: grid.rowCount, dates, lastChild: stringAt(grid, grid.rowCount - 1, 0) };
}
