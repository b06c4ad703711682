/** What the shell is told. */
export const EXIT = { done: 0, findings: 1, badRequest: 2, unreadable: 3 } as const;

/** A failure that a person can mend: its message says what happened and what to do. */
export class CommandFailure extends Error {
  constructor(
    readonly exitCode: number,
    message: string,
  ) {
    super(message);
    this.name = "CommandFailure";
  }
}

export function badRequest(message: string): CommandFailure {
  return new CommandFailure(EXIT.badRequest, message);
}

export function unreadable(message: string): CommandFailure {
  return new CommandFailure(EXIT.unreadable, message);
}
