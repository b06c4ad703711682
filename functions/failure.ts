export type FailureCode = "#VALUE!" | "#N/A" | "#NUM!" | "#NAME?";

/**
 * An error as a cell shows it, with a sentence that says what to do. `#VALUE!` is bad input, `#N/A` cannot be estimated,
 * `#NUM!` is out of range. It carries no cell text of Children or Observations.
 */
export class CellFailure extends Error {
  constructor(
    readonly code: FailureCode,
    message: string,
  ) {
    super(message);
    this.name = "CellFailure";
  }
}

export function invalid(message: string): CellFailure {
  return new CellFailure("#VALUE!", message);
}

export function notEstimable(message: string): CellFailure {
  return new CellFailure("#N/A", message);
}

export function outOfRange(message: string): CellFailure {
  return new CellFailure("#NUM!", message);
}

/** Puts the row in front, for functions in which one bad row makes the call an error. Row 1 is the first of the range given. */
export function inRow(row: number, failure: CellFailure): CellFailure {
  return new CellFailure(failure.code, `Row ${row}: ${failure.message}`);
}

/** The failure behind whatever was thrown: what the core refuses is bad input. */
export function failureFrom(thrown: unknown): CellFailure {
  if (thrown instanceof CellFailure) return thrown;
  if (thrown instanceof RangeError) return invalid(thrown.message);
  throw thrown;
}

interface ExcelRuntime {
  readonly Error: new (code: unknown, message: string) => Error;
  readonly ErrorCode: {
    readonly invalidValue: unknown;
    readonly notAvailable: unknown;
    readonly invalidNumber: unknown;
  };
}

/** In Excel the error that its runtime knows; elsewhere the failure itself. */
export function forHost(failure: CellFailure): Error {
  const excel = (globalThis as { CustomFunctions?: ExcelRuntime }).CustomFunctions;
  if (!excel) return failure;
  if (failure.code === "#N/A") return new excel.Error(excel.ErrorCode.notAvailable, failure.message);
  if (failure.code === "#NUM!") return new excel.Error(excel.ErrorCode.invalidNumber, failure.message);
  return new excel.Error(excel.ErrorCode.invalidValue, failure.message);
}
