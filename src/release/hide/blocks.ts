import { knowledgeOf } from "../knowledge";
import { partsOf } from "../parts";
import { type Cell, type CountSystem, isSecret } from "../system";

/** Cells that can bear on one another's protection, however much is hidden: each block is protected by itself. */
export interface Block {
  /** Cells that may be hidden to protect others. */
  readonly choices: readonly number[];
}

/** The blocks of a system, and the block of each cell; -1 for cells that are known whatever is hidden. */
export function blocksOf(system: CountSystem): { blocks: Block[]; blockOf: Int32Array } {
  const allHidden = new Uint8Array(system.cells.length).fill(1);
  // a cell that could be shown is never spare here: shown, it ties what it is the sum of
  const isSpare = (cell: Cell) => cell.showing === "never" && !isSecret(cell);
  const parts = partsOf(system, knowledgeOf(system, allHidden), isSpare);
  const blockOf = new Int32Array(system.cells.length).fill(-1);
  parts.forEach(({ cells }, block) => cells.forEach((cell) => (blockOf[cell] = block)));
  const blocks = parts.map(({ cells }) => ({ choices: cells.filter((cell) => isChoice(system, cell)) }));
  return { blocks, blockOf };
}

function isChoice({ cells }: CountSystem, cell: number): boolean {
  return cells[cell]!.showing === "table" && !isSecret(cells[cell]!);
}
