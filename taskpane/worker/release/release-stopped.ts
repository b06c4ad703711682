/** No release can be made or saved; the message is a sentence for a person, and carries no text of a cell. */
export class ReleaseStopped extends Error {
  override readonly name = "ReleaseStopped";
}
