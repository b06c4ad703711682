/** What a file of a release holds that it must not, and where: the scan before saving stops at the first. */
export class ReleaseRefused extends Error {
  override readonly name = "ReleaseRefused";

  /**
   * @param part - the part of the file
   * @param what - in words, without the text itself
   * @param advice - what to do; when left out it is a fault of the tool
   */
  constructor(
    readonly part: string,
    what: string,
    advice = "tell the person who maintains the tool",
  ) {
    super(`The part ${part} of what was to be written has ${what}, so nothing was written: ${advice}.`);
  }
}
