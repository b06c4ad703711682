/** An error as Excel answers it: a code of the Office reference, "Error handling with the application-specific JavaScript APIs". */
export class RichError extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly location = "",
  ) {
    super(message);
  }
}

export function invalidArgument(location: string): RichError {
  return new RichError("InvalidArgument", "The argument is invalid or missing or has an incorrect format.", location);
}

/** What this workbook has no answer for is refused, never passed over. */
export function notImplemented(location: string): RichError {
  return new RichError("NotImplemented", "The requested feature isn't implemented.", location);
}
