import { type CallAnswer, callFunction } from "../../src/cli/call";

/** The rows that `call` prints; fails where it prints an error. */
export function rowsOf(name: string, ...args: unknown[]) {
  const answer = callFunction(name, args);
  if ("error" in answer) throw new Error(`${answer.error} ${answer.message}`);
  return answer.result;
}

/** The one cell of an answer of one cell. */
export function cellOf(name: string, ...args: unknown[]) {
  const rows = rowsOf(name, ...args);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toHaveLength(1);
  return rows[0]?.[0];
}

export function answerOf(name: string, ...args: unknown[]): CallAnswer {
  return callFunction(name, args);
}

export function column(cells: readonly unknown[]): unknown[][] {
  return cells.map((cell) => [cell]);
}
