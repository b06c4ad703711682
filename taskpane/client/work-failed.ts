import type { Failure } from "../worker/messages";

/** The worker could not do what was asked; `said` is a sentence for a person, or null where it has none. */
export class WorkFailed extends Error {
  override readonly name = "WorkFailed";
  readonly said: string | null;

  constructor(readonly failure: Failure) {
    super(failure.name);
    this.said = failure.message;
  }
}
