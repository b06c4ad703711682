import { CellFailure } from "../failure";
import { FUNCTIONS, NAMESPACE } from "../registry";

export interface CellError {
  readonly error: string;
  readonly message: string;
}

export type AnsweredCell = string | number | boolean | CellError;

/** What a worksheet function gave, in a form that crosses to another thread and back. */
export type Answer = { readonly rows: readonly (readonly AnsweredCell[])[] } | CellError;

/** Calls a worksheet function of ours. Nothing is ever thrown: one throw would stop every formula of the grid. */
export function answerOf(name: string, args: readonly unknown[]): Answer {
  const called = FUNCTIONS.get(name);
  if (!called) return { error: "#NAME?", message: `There is no function ${name}.` };
  const missing = called.parameters.slice(args.length).find((each) => !each.startsWith("["));
  if (missing !== undefined || args.length > called.parameters.length) {
    return {
      error: "#VALUE!",
      message: `${NAMESPACE}.${name} takes ${called.parameters.join(", ")}: ${args.length} were given.`,
    };
  }
  try {
    const given = called.parameters.map((_, at) => args[at] ?? null);
    return { rows: called.fn(...given).map((row) => row.map(plainCell)) };
  } catch (thrown) {
    if (thrown instanceof CellFailure) return { error: thrown.code, message: thrown.message };
    return {
      error: "#VALUE!",
      message: "This should not have happened: please report the function and its arguments.",
    };
  }
}

/** The first message of an answer, where some cell of it is an error. */
export function messageOf(answer: Answer): string | null {
  if ("error" in answer) return answer.message;
  for (const row of answer.rows) for (const cell of row) if (typeof cell === "object") return cell.message;
  return null;
}

function plainCell(cell: unknown): AnsweredCell {
  if (cell instanceof CellFailure) return { error: cell.code, message: cell.message };
  return (cell ?? "") as AnsweredCell;
}
