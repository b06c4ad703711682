import type { SaxesTagNS } from "saxes";
import { unescaped } from "./escapes";
import type { Texts } from "./texts";
import { OUTSIDE, type XmlHandler } from "./xml-reader";

/** The list of shared texts through the fallback parser: runs joined, phonetic readings left out. */
export class SharedTextsHandler implements XmlHandler {
  isInList = false;
  private joined = "";
  private isText = false;

  constructor(private readonly texts: Texts) {}

  open(name: string, parent: string, tag: SaxesTagNS): void {
    if (name === "si" && parent === "sst") this.joined = "";
    else if (name === "t") this.isText = parent === "si" || parent === "r";
    else if (name === "sst" && parent === OUTSIDE) this.isInList = tag.prefix === "";
  }

  text(text: string, name: string): void {
    if (name === "t" && this.isText) this.joined += text;
  }

  close(name: string, parent: string): void {
    if (name === "si" && parent === "sst") this.texts.addShared(unescaped(this.joined));
  }
}
