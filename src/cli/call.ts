import { inJson } from "../../functions/date-system";
import { CellFailure, type FailureCode, invalid } from "../../functions/failure";
import { FUNCTIONS, NAMESPACE, type WorksheetFunction } from "../../functions/registry";

/** A cell of a result: not estimable and blank are null; a bad row holds its own error. */
export type CallCell = string | number | boolean | null | CallError;

export interface CallError {
  readonly error: FailureCode;
  readonly message: string;
}

export type CallAnswer = { readonly result: readonly (readonly CallCell[])[] } | CallError;

/** Calls a worksheet function with arguments as JSON has them: a range is an array of rows, a blank cell null. */
export function callFunction(name: string, args: unknown): CallAnswer {
  const called = functionNamed(name);
  if (!called) return noSuchFunction(name);
  try {
    const given = argumentsFor(called, name, args);
    return { result: inJson(() => called.fn(...given)) };
  } catch (thrown) {
    if (thrown instanceof CellFailure) return { error: thrown.code, message: thrown.message };
    throw thrown;
  }
}

export function isFunctionName(name: string): boolean {
  return functionNamed(name) !== undefined;
}

/** True where the solver has to be there before the function is called. */
export function needsSolver(name: string): boolean {
  return functionNamed(name)?.needsSolver === true;
}

function functionNamed(name: string): WorksheetFunction | undefined {
  return FUNCTIONS.get(bareName(name));
}

/** The namespace may be left out; case does not matter. */
function bareName(name: string): string {
  return name
    .trim()
    .toUpperCase()
    .replace(new RegExp(`^${NAMESPACE}\\.`), "");
}

function noSuchFunction(name: string): CallError {
  const known = [...FUNCTIONS.keys()].map((each) => `${NAMESPACE}.${each}`).join(", ");
  return {
    error: "#NAME?",
    message: `There is no function ${NAMESPACE}.${bareName(name)}. The functions are: ${known}.`,
  };
}

function argumentsFor({ parameters }: WorksheetFunction, name: string, args: unknown): unknown[] {
  const full = `${NAMESPACE}.${bareName(name)}`;
  const usage = `${full}(${parameters.join(", ")})`;
  if (!Array.isArray(args))
    throw invalid(`${usage} takes a JSON array of arguments, such as [[["2026-01-31"]], null].`);
  if (args.length > parameters.length) throw invalid(`${usage}: ${args.length} arguments were given.`);
  const missing = parameters.slice(args.length).find((each) => !each.startsWith("["));
  if (missing !== undefined) throw invalid(`${usage}: ${missing} is missing.`);
  return parameters.map((_, at) => (args as unknown[])[at] ?? null);
}
