/** Runs `calls` with the part of Excel's custom-functions runtime that an answer meets: its error class and codes. */
export function inExcel<Result>(calls: () => Result): Result {
  const host = globalThis as { CustomFunctions?: unknown };
  host.CustomFunctions = { Error: ExcelError, ErrorCode: EXCEL_CODES };
  try {
    return calls();
  } finally {
    delete host.CustomFunctions;
  }
}

/** Source of the codes: Microsoft, "CustomFunctions.ErrorCode enum", Office Add-ins reference. */
export const EXCEL_CODES = { invalidValue: "#VALUE!", notAvailable: "#N/A", invalidNumber: "#NUM!" } as const;

export class ExcelError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}
